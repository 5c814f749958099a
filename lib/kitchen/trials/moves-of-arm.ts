import 'server-only'
import { totalShare } from '../../calc/arms/total-share'
import type { ArmLine, ArmTotal, LineMove } from '../../calc/arms/types'
import { usualMoves } from '../../calc/arms/usual-moves'

/**
 * Which lines of the final dough may move to make room for a dose: the usual ones, and flour or salt where their own
 * total is to be held, which nothing else can do; what somebody chose for a line goes before both. Lines of pre-ferments, scalds and soakers stay: they are made once
 * for all arms. A line that does not state a held total cannot move, and is named.
 * @param chosen whether a line may move, by its id, where somebody chose that
 */
export function movesOfArm(
  finalDough: readonly ArmLine[],
  hold: readonly ArmTotal[],
  chosen: ReadonlyMap<string, boolean>,
): { moves: LineMove[]; unstatedLineIds: string[] } {
  const usual = new Set(usualMoves(finalDough).map(({ lineId }) => lineId))
  const isForItsTotal = (line: ArmLine) =>
    (line.isFlour && hold.includes('flour')) || (line.kind === 'salt' && hold.includes('salt'))
  const all = finalDough
    .filter((line) => chosen.get(line.id) ?? (usual.has(line.id) || isForItsTotal(line)))
    .map((line): LineMove => ({ lineId: line.id, minG: 0, maxG: null }))
  const isStated = ({ lineId }: LineMove) => {
    const line = finalDough.find(({ id }) => id === lineId)
    return line !== undefined && hold.every((total) => totalShare(line, total) !== null)
  }
  return {
    moves: all.filter(isStated),
    unstatedLineIds: all.filter((move) => !isStated(move)).map(({ lineId }) => lineId),
  }
}

import 'server-only'
import type { z } from 'zod'
import { isDeepStrictEqual } from 'node:util'
import type { Tx } from '../../db/client'
import { command } from '../command'
import { Refusal, type Problem } from '../refusal'
import { staleRefusal } from '../stale'
import { chooseLinesInput } from './choose-lines.input'
import { lockTrial } from './lock-trial'
import { noteAuthor } from './note-author'

type Line = z.output<typeof chooseLinesInput>['lines'][number]

/**
 * Says of the lines of a draft's doughs what the rules would say otherwise: which may move to make room for a dose, and
 * on which scale each goes. What is not named goes by the rules. Who changes any of it is an author of the trial.
 * Refuses: not-found, stale; a line or a scale that is not there, at its field.
 */
export const chooseLines = command({
  name: 'trials.choose-lines',
  input: chooseLinesInput,
  right: 'propose-trial',
  async run({ tx, actor, now, input: { trialId, seenRevision, lines } }) {
    const { bakeryId, personId } = actor
    const trial = await lockTrial(tx, bakeryId, trialId)
    await mustBeThere(tx, bakeryId, trialId, trial.controlVersionId, lines)
    const { count } = await tx.trial.updateMany({
      where: { bakeryId, id: trialId, state: 'draft', revision: seenRevision },
      data: { revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, trialId)
    const chosen = lines.filter(({ mayMove, scaleId }) => mayMove !== null || scaleId !== null)
    const former = await tx.trialLine.findMany({
      where: { bakeryId, trialId },
      select: { stageKind: true, ingredientId: true, mayMove: true, scaleId: true },
    })
    if (!isDeepStrictEqual(inOrder(former), inOrder(chosen))) await noteAuthor(tx, { bakeryId, trialId, personId }, now)
    await tx.trialLine.deleteMany({ where: { bakeryId, trialId } })
    await tx.trialLine.createMany({ data: chosen.map((line) => ({ bakeryId, trialId, ...line })) })
    return {
      value: { revision: seenRevision + 1 },
      audit: { target: trialId, before: { lines: inOrder(former) }, after: { lines: inOrder(chosen) } },
    }
  },
})

function inOrder(lines: readonly Line[]): Line[] {
  const keyOf = ({ stageKind, ingredientId }: Line) => `${stageKind} ${ingredientId}`
  return [...lines]
    .sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1))
    .map(({ stageKind, ingredientId, mayMove, scaleId }) => ({ stageKind, ingredientId, mayMove, scaleId }))
}

/** Demands that each line is the control's or, in the final dough, of a dose, and that each scale is in use. */
async function mustBeThere(
  tx: Tx,
  bakeryId: string,
  trialId: string,
  versionId: string,
  lines: readonly Line[],
): Promise<void> {
  const [ofControl, doses, scales] = [
    await tx.formulaLine.findMany({
      where: { bakeryId, versionId },
      select: { ingredientId: true, stage: { select: { kind: true } } },
    }),
    await tx.armDose.findMany({ where: { bakeryId, arm: { trialId } }, select: { ingredientId: true } }),
    await tx.equipment.findMany({
      where: { bakeryId, kind: 'scale', endedAt: null, id: { in: lines.flatMap(({ scaleId }) => scaleId ?? []) } },
      select: { id: true },
    }),
  ]
  const isInControl = (line: Line) =>
    ofControl.some(({ ingredientId, stage }) => ingredientId === line.ingredientId && stage.kind === line.stageKind)
  const isDosed = (line: Line) =>
    line.stageKind === 'final_dough' && doses.some(({ ingredientId }) => ingredientId === line.ingredientId)
  const problems = lines.flatMap((line, l): Problem[] => {
    if (!isInControl(line) && !isDosed(line))
      return [
        { path: `lines.${l}.${line.scaleId === null ? 'mayMove' : 'scaleId'}`, code: 'line-not-there', facts: {} },
      ]
    if (line.mayMove !== null && !isInControl(line))
      return [{ path: `lines.${l}.mayMove`, code: 'wrong-choice', facts: {} }]
    if (line.scaleId !== null && !scales.some(({ id }) => id === line.scaleId))
      return [{ path: `lines.${l}.scaleId`, code: 'wrong-choice', facts: {} }]
    return []
  })
  if (problems.length > 0) throw new Refusal('invalid', {}, problems)
}

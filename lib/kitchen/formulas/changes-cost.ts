import 'server-only'
import { costDifference } from '../../calc/cost/cost-difference'
import type { Decimal } from '../../calc/cost/decimal'

/** What goes into one piece, g by ingredient, and what that costs in minor units; null where it is not known. */
export type PieceCost = { massesG: ReadonlyMap<string, number>; perPieceMinor: Decimal | null; currency: string | null }

/** Below this, in g of one piece, two masses are one: binary fractions of the same written figure. */
const sameMassG = 1e-6

/**
 * Whether a piece costs so much more or less than before that the owner must know. The same things in the same
 * masses never do. A cost that is not known on either side, or is in another currency, may be anything.
 * @param limitPct the bakery's, % of the cost before, ≥ 0; a change of exactly that much is within it
 */
export function changesCost(from: PieceCost, to: PieceCost, limitPct: number): boolean {
  const ids = new Set([...from.massesG.keys(), ...to.massesG.keys()])
  const isSame = [...ids].every((id) => Math.abs((from.massesG.get(id) ?? 0) - (to.massesG.get(id) ?? 0)) < sameMassG)
  if (isSame) return false
  if (!from.perPieceMinor || !to.perPieceMinor || from.currency !== to.currency) return true
  const { differenceMinor, differencePct } = costDifference({
    controlMinor: from.perPieceMinor,
    armMinor: to.perPieceMinor,
  })
  return differencePct === null ? !differenceMinor.isZero() : differencePct.abs().greaterThan(limitPct)
}

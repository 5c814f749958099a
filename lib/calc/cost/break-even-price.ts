import { mustBeWhole, mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { Decimal } from './decimal'

export type BreakEven =
  | { outcome: 'price'; perKgMinor: Decimal }
  /** Even as a gift it does not pay: the arm costs more without it than the control and the gain allow. */
  | { outcome: 'never'; shortMinor: Decimal }

/**
 * The price at which the added ingredient costs as much as it gains, per good piece:
 * p · m = n · (control + gain) − rest, with m its mass in the batch and n the good pieces of the arm.
 * @param controlPerGoodPieceMinor cost of a good piece of the control, ≥ 0
 * @param gainPerGoodPieceMinor what the arm's piece is worth more, as the owner says; negative when it is worth less
 * @param armRestMinor cost of the arm's batch without the added ingredient, ≥ 0
 * @param armGoodPieces whole, ≥ 1
 * @param addedMassG in that batch, g, > 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition of break-even; common practice, no source.
 */
export function breakEvenPrice(q: {
  controlPerGoodPieceMinor: Decimal
  gainPerGoodPieceMinor: Decimal
  armRestMinor: Decimal
  armGoodPieces: number
  addedMassG: number
}): BreakEven {
  for (const field of ['controlPerGoodPieceMinor', 'armRestMinor'] as const) {
    if (!q[field].isFinite() || q[field].isNegative()) {
      throw new CalcError('out-of-range', { field, value: q[field].toString(), min: 0 })
    }
  }
  if (!q.gainPerGoodPieceMinor.isFinite()) {
    throw new CalcError('not-finite', { field: 'gainPerGoodPieceMinor', value: q.gainPerGoodPieceMinor.toString() })
  }
  mustBeWhole('armGoodPieces', q.armGoodPieces, { min: 1 })
  mustBeWithin('addedMassG', q.addedMassG, { over: 0 })
  const leftMinor = q.controlPerGoodPieceMinor
    .plus(q.gainPerGoodPieceMinor)
    .times(q.armGoodPieces)
    .minus(q.armRestMinor)
  if (leftMinor.isNegative()) return { outcome: 'never', shortMinor: leftMinor.negated() }
  return { outcome: 'price', perKgMinor: leftMinor.times(1000).dividedBy(new Decimal(q.addedMassG)) }
}

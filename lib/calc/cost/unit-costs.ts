import { mustBeWhole, mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { Decimal } from './decimal'

export type UnitCosts = {
  /** By the pieces that the formula plans: what the recipe card says. */
  perPlannedPieceMinor: Decimal
  /** By the pieces good enough to sell: what a loaf really costs. */
  perGoodPieceMinor: Decimal
  perKgMinor: Decimal
  perLitreMinor: Decimal
}

/**
 * Cost of one piece, one kg and one litre of bread from the cost of a batch. kg and litre are of good bread.
 * @param totalMinor cost of the batch, minor units, ≥ 0
 * @param plannedPieces, goodPieces whole, ≥ 1; good not above planned
 * @param goodMassG cooled mass of the good pieces, g, > 0
 * @param goodVolumeMl volume of the good pieces, mL, > 0
 * @throws CalcError 'not-finite' | 'out-of-range'; goodPieces of 0 is out of range: there is no cost of a loaf then
 * Source: Gisslen, Professional Baking: divide by units sold, not by formula yield.
 * @example 17 235 cents over 160 planned and 150 good: 107.72 and 114.90 cents
 */
export function unitCosts(q: {
  totalMinor: Decimal
  plannedPieces: number
  goodPieces: number
  goodMassG: number
  goodVolumeMl: number
}): UnitCosts {
  if (!q.totalMinor.isFinite() || q.totalMinor.isNegative()) {
    throw new CalcError('out-of-range', { field: 'totalMinor', value: q.totalMinor.toString(), min: 0 })
  }
  mustBeWhole('plannedPieces', q.plannedPieces, { min: 1 })
  mustBeWhole('goodPieces', q.goodPieces, { min: 1, max: q.plannedPieces })
  mustBeWithin('goodMassG', q.goodMassG, { over: 0 })
  mustBeWithin('goodVolumeMl', q.goodVolumeMl, { over: 0 })
  return {
    perPlannedPieceMinor: q.totalMinor.dividedBy(q.plannedPieces),
    perGoodPieceMinor: q.totalMinor.dividedBy(q.goodPieces),
    perKgMinor: q.totalMinor.times(1000).dividedBy(new Decimal(q.goodMassG)),
    perLitreMinor: q.totalMinor.times(1000).dividedBy(new Decimal(q.goodVolumeMl)),
  }
}

import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { Decimal } from './decimal'
import { mustBeAmount } from './must-be-amount'

/** Yield by the purchase: beyond it a mass is a slip. */
const MOST_G = 1e9

export type UsablePrice = {
  /** As bought, delivered. */
  boughtPerKgMinor: Decimal
  usableYieldPct: Decimal
  /** What a kg really costs once trim and loss are off. */
  usablePerKgMinor: Decimal
  perPieceMinor: Decimal | null
}

/**
 * Price of a kg that gets used, from the price of a pack or of pieces: freight comes on top, trim and preparation take
 * off, loss in handling takes off again. Always divided by the yield, never marked up by the loss; exact decimals.
 * @param packMinor price of the pack or of all the pieces, minor units, ≥ 0; freightMinor for `freightMassG`, ≥ 0
 * @param packMassG what it weighs, g; @param pieces in it, ≥ 1, or null when it is not counted
 * @param preparedFromG, preparedToG a weighed preparation, such as 5200 g trimmed to 4600; lossPct in handling, 0 to below 100
 * @throws CalcError 'not-finite' | 'out-of-range'; more ready than there was is out of range at preparedToG
 * Source: W. Gisslen, Professional Cooking, as reproduced (as purchased and edible portion); arithmetic.
 * @example 5.2 kg trimmed to 4.6 kg at 11.95 a kg: 13.508696 a kg
 */
export function usablePrice(q: {
  packMinor: Decimal
  packMassG: number
  pieces: number | null
  freightMinor: Decimal
  freightMassG: number
  preparedFromG: number
  preparedToG: number
  lossPct: number
}): UsablePrice {
  mustBeAmount('packMinor', q.packMinor)
  mustBeAmount('freightMinor', q.freightMinor)
  mustBeWithin('packMassG', q.packMassG, { over: 0, max: MOST_G })
  mustBeWithin('freightMassG', q.freightMassG, { over: 0, max: MOST_G })
  mustBeWithin('preparedFromG', q.preparedFromG, { over: 0, max: MOST_G })
  mustBeWithin('preparedToG', q.preparedToG, { over: 0, max: q.preparedFromG })
  mustBeWithin('lossPct', q.lossPct, { min: 0, under: 100 })
  if (q.pieces !== null && !(Number.isInteger(q.pieces) && q.pieces >= 1)) {
    throw new CalcError('out-of-range', { field: 'pieces', value: q.pieces, min: 1, reason: 'not-whole' })
  }
  const perKg = (minor: Decimal, massG: number) => minor.times(1000).dividedBy(new Decimal(massG))
  const boughtPerKgMinor = perKg(q.packMinor, q.packMassG).plus(perKg(q.freightMinor, q.freightMassG))
  const kept = new Decimal(100).minus(new Decimal(q.lossPct))
  const usedOf100 = new Decimal(q.preparedToG).times(kept)
  const usablePerKgMinor = boughtPerKgMinor.times(new Decimal(q.preparedFromG)).times(100).dividedBy(usedOf100)
  const boughtMinor = boughtPerKgMinor.times(new Decimal(q.packMassG)).dividedBy(1000)
  const perPieceMinor = q.pieces === null ? null : boughtMinor.times(100).dividedBy(kept).dividedBy(q.pieces)
  return {
    boughtPerKgMinor,
    usableYieldPct: usedOf100.dividedBy(new Decimal(q.preparedFromG)),
    usablePerKgMinor,
    perPieceMinor,
  }
}

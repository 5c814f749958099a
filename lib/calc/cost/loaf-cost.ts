import { mustBeWithin } from '../checks'
import { Decimal } from './decimal'
import { mustBeAmount } from './must-be-amount'

/**
 * Ingredient cost of one loaf of a dough: of one piece of the formula's scaling mass, with its part of the dough that is
 * lost. It goes by the dough's own mass, not by how many pieces somebody made of it, so that a heavier dough is not a
 * dearer loaf: c = total / (M · (1 − loss) / m).
 * @param totalMinor cost of the whole dough, minor units, ≥ 0
 * @param doughMassG M, of all that is weighed into it, g, > 0
 * @param scalingMassG m, of one piece, g, > 0
 * @param doughLossPct of the dough, 0 ≤ loss < 100
 * @returns minor units, not rounded
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition; common practice, no source.
 * @example 166.34 cents for 1,600 g of dough, pieces of 400 g, no loss: 41.585 cents
 */
export function loafCostMinor(q: {
  totalMinor: Decimal
  doughMassG: number
  scalingMassG: number
  doughLossPct: number
}): Decimal {
  mustBeAmount('totalMinor', q.totalMinor)
  const doughMassG = new Decimal(mustBeWithin('doughMassG', q.doughMassG, { over: 0 }))
  mustBeWithin('scalingMassG', q.scalingMassG, { over: 0 })
  mustBeWithin('doughLossPct', q.doughLossPct, { min: 0, under: 100 })
  const keptPct = new Decimal(100).minus(q.doughLossPct)
  return q.totalMinor.times(q.scalingMassG).times(100).dividedBy(doughMassG.times(keptPct))
}

import { mustBeWithin } from '../checks'
import { Decimal } from './decimal'
import { mustBeAmount } from './must-be-amount'

const WEEKS_IN_YEAR = 52.1775
/** Of masses and weeks: what a bakery can mean. */
const RANGE = { min: 0.001, max: 1e9 }

export type LeastOrder = {
  usedOfOrderG: number
  thrownAwayOfOrderG: number
  thrownAwayShare: number
  weeksOneOrderLasts: number
  ordersPerYear: number
  thrownAwayPerYearMinor: Decimal
  /** Price of a kg that gets used, with what is thrown away in it. */
  perUsedKgMinor: Decimal
}

/**
 * What the least order of an ingredient means for a bakery that uses little of it: how much is thrown away at its
 * best-before, and what a kg that gets used really costs.
 * @param leastOrderG, useGPerWeek, bestBeforeWeeks (from delivery) 0.001 to a thousand million
 * @param perKgMinor price of a kg as ordered, ≥ 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: mass balance; common practice, no source. A year is 52.1775 weeks.
 * @example order 25 kg, use 200 g a week, 52 weeks: 10.4 kg used, 14.6 kg thrown away
 */
export function leastOrder(q: {
  leastOrderG: number
  useGPerWeek: number
  bestBeforeWeeks: number
  perKgMinor: Decimal
}): LeastOrder {
  mustBeWithin('leastOrderG', q.leastOrderG, RANGE)
  mustBeWithin('useGPerWeek', q.useGPerWeek, RANGE)
  mustBeWithin('bestBeforeWeeks', q.bestBeforeWeeks, RANGE)
  mustBeAmount('perKgMinor', q.perKgMinor)
  const weeksOneOrderLasts = mustBeWithin('useGPerWeek', Math.min(q.bestBeforeWeeks, q.leastOrderG / q.useGPerWeek))
  const usedOfOrderG = Math.min(q.leastOrderG, q.useGPerWeek * q.bestBeforeWeeks)
  const thrownAwayOfOrderG = q.leastOrderG - usedOfOrderG
  const ordersPerYear = WEEKS_IN_YEAR / weeksOneOrderLasts
  const perGMinor = q.perKgMinor.dividedBy(1000)
  return {
    usedOfOrderG,
    thrownAwayOfOrderG,
    thrownAwayShare: thrownAwayOfOrderG / q.leastOrderG,
    weeksOneOrderLasts,
    ordersPerYear,
    thrownAwayPerYearMinor: perGMinor.times(new Decimal(thrownAwayOfOrderG)).times(new Decimal(ordersPerYear)),
    perUsedKgMinor: q.perKgMinor.times(new Decimal(q.leastOrderG)).dividedBy(new Decimal(usedOfOrderG)),
  }
}

import { mustBeWithin } from '../checks'
import { Decimal } from './decimal'
import { mustBeAmount } from './must-be-amount'

const WEEKS_IN_YEAR = 52.1775

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
 * @param leastOrderG > 0; useGPerWeek > 0; bestBeforeWeeks from delivery, > 0
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
  mustBeWithin('leastOrderG', q.leastOrderG, { over: 0 })
  mustBeWithin('useGPerWeek', q.useGPerWeek, { over: 0 })
  mustBeWithin('bestBeforeWeeks', q.bestBeforeWeeks, { over: 0 })
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

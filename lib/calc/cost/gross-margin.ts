import { CalcError } from '../error'
import type { Decimal } from './decimal'

/**
 * Gross margin, %: what is left of the price after the cost, on the price. Negative when it is sold below cost.
 * @param priceMinor selling price without tax, > 0
 * @param costMinor ≥ 0
 * @throws CalcError 'out-of-range'
 * Source: South African milling company, glossary of bakery terms.
 * @example cost 107.72, price 450: 76.06 %
 */
export function grossMarginPct(q: { priceMinor: Decimal; costMinor: Decimal }): Decimal {
  if (!q.priceMinor.isFinite() || q.priceMinor.lessThanOrEqualTo(0)) {
    throw new CalcError('out-of-range', { field: 'priceMinor', value: q.priceMinor.toString(), min: 0 })
  }
  if (!q.costMinor.isFinite() || q.costMinor.isNegative()) {
    throw new CalcError('out-of-range', { field: 'costMinor', value: q.costMinor.toString(), min: 0 })
  }
  return q.priceMinor.minus(q.costMinor).times(100).dividedBy(q.priceMinor)
}

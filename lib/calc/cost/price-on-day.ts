import { CalcError } from '../error'
import { mustBeDay } from './must-be-day'
import { mustBeDecimal } from './must-be-decimal'

export type Price = {
  /** First day on which it holds, YYYY-MM-DD; it holds until the next one begins. */
  validFrom: string
  /** Minor units of the currency per kg, a decimal string: '89.5' is 0.895 euro. */
  perKgMinor: string
  currency: string
}

/**
 * The price that holds on a day: the latest that began on it or before. Null when none had begun; never an older guess.
 * @param day YYYY-MM-DD
 * @throws CalcError 'out-of-range' for a day that does not exist; 'not-finite' | 'out-of-range' for a price that is no
 *   decimal ≥ 0; 'duplicate' when two begin on one day
 * Source: common practice, no source.
 */
export function priceOnDay(q: { prices: readonly Price[]; day: string }): Price | null {
  mustBeDay('day', q.day)
  const days = new Set<string>()
  let holds: Price | null = null
  q.prices.forEach((price, i) => {
    mustBeDay(`prices[${i}].validFrom`, price.validFrom)
    mustBeDecimal(`prices[${i}].perKgMinor`, price.perKgMinor)
    if (days.has(price.validFrom))
      throw new CalcError('duplicate', { field: `prices[${i}].validFrom`, value: price.validFrom })
    days.add(price.validFrom)
    if (price.validFrom <= q.day && (holds === null || price.validFrom > holds.validFrom)) holds = price
  })
  return holds
}

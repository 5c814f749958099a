import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { Decimal } from './decimal'
import { priceOnDay, type Price } from './price-on-day'

export type BatchCost = {
  day: string
  currency: string
  lines: {
    lineId: string
    /** Price used, minor units per kg, and the day from which it held. */
    perKgMinor: Decimal
    validFrom: string
    costMinor: Decimal
  }[]
  totalMinor: Decimal
}

/**
 * Ingredient cost of one batch at the prices of a day, exact. A line without a price on that day is refused by its name:
 * a missing price is not a price of nothing. What costs nothing (tap water, say) has the price '0'.
 * @param lines masses g, ≥ 0; all prices in one currency
 * @param day YYYY-MM-DD
 * @returns minor units as decimals, not rounded
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range' | 'duplicate'; 'not-possible' with reason 'no-price-on-day' and the
 *   line's name, or 'mixed-currencies'
 * Source: definition; common practice, no source.
 */
export function batchCost(q: {
  lines: readonly { lineId: string; name: string; massG: number; prices: readonly Price[] }[]
  day: string
}): BatchCost {
  mustHaveAtLeast('lines', q.lines, 1)
  let currency: string | null = null
  let totalMinor = new Decimal(0)
  const lines = q.lines.map((line, i) => {
    mustBeWithin(`lines[${i}].massG`, line.massG, { min: 0 })
    const price = priceOnDay({ prices: line.prices, day: q.day })
    if (price === null) {
      throw new CalcError('not-possible', { field: `lines[${i}].prices`, value: line.name, reason: 'no-price-on-day' })
    }
    if (currency !== null && price.currency !== currency) {
      throw new CalcError('not-possible', { field: `lines[${i}].prices`, value: line.name, reason: 'mixed-currencies' })
    }
    currency = price.currency
    const perKgMinor = new Decimal(price.perKgMinor)
    const costMinor = perKgMinor.times(new Decimal(line.massG)).dividedBy(1000)
    totalMinor = totalMinor.plus(costMinor)
    return { lineId: line.lineId, perKgMinor, validFrom: price.validFrom, costMinor }
  })
  return { day: q.day, currency: currency ?? '', lines, totalMinor }
}

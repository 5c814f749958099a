import 'server-only'
import { Decimal } from '../../calc/cost/decimal'

/**
 * Price of one kg out of the price of a pack, in major units of the currency, not rounded but at the 40th digit.
 * @param packPrice price of the pack, decimal text or a decimal, ≥ 0
 * @param packMassG mass of the pack, g, > 0
 * Source: definition.
 * @example pricePerKg({ packPrice: '18.75', packMassG: 25_000 }) // 0.75
 */
export function pricePerKg(q: { packPrice: { toString(): string }; packMassG: number }): Decimal {
  return new Decimal(q.packPrice.toString()).times(1000).dividedBy(q.packMassG)
}

import 'server-only'
import type { Price } from '../../calc/cost/price-on-day'
import type { HeldPrice } from './price-on'

/** A price of the stores as lib/calc/cost takes it: minor units per kg, to the twelfth digit behind the mark. */
export function asCostPrice(held: HeldPrice): Price {
  const { maximumFractionDigits: digits = 0 } = new Intl.NumberFormat('en', { style: 'currency', currency: held.currency }).resolvedOptions()
  return { validFrom: held.holdsFrom, perKgMinor: held.perKg.times(10 ** digits).toDecimalPlaces(12).toFixed(), currency: held.currency }
}

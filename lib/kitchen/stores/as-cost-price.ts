import 'server-only'
import type { Price } from '../../calc/cost/price-on-day'
import { minorDigits } from '../../words/format/minor-digits'
import type { HeldPrice } from './price-on'

/** A price of the stores as lib/calc/cost takes it: minor units per kg, to the twelfth digit behind the mark. */
export function asCostPrice(held: HeldPrice): Price {
  return {
    validFrom: held.holdsFrom,
    perKgMinor: held.perKg
      .times(10 ** minorDigits(held.currency))
      .toDecimalPlaces(12)
      .toFixed(),
    currency: held.currency,
  }
}

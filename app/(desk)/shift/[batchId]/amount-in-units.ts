import 'server-only'
import { fromBaseUnit } from '@/lib/kitchen/readings/from-base-unit'
import { formatNumber } from '@/lib/words/format/number'
import { withUnit } from '@/lib/words/format/with-unit'
import type { BakeryShown } from './batch-view'

/** The unit in which a bakery weighs small things, reads temperatures and counts a proof; other units stay. */
export function ownUnit(baseUnit: string, bakery: BakeryShown): string {
  if (baseUnit === 'g' && bakery.massUnits === 'ounces') return 'oz'
  if (baseUnit === '°C' && bakery.temperatureUnits === 'fahrenheit') return '°F'
  return baseUnit === 's' ? 'min' : baseUnit
}

/**
 * An amount in a base unit, in the bakery's own.
 * @param digits after the decimal mark in the base unit; an ounce, 28 times a gram, takes two more, a minute one where
 * it is not whole
 */
export function amountInUnits(value: number, baseUnit: string, digits: number, bakery: BakeryShown): string {
  const unit = ownUnit(baseUnit, bakery)
  const own = fromBaseUnit({ value, unit, baseUnit }) ?? value
  const more = unit === 'oz' ? 2 : unit === 'min' && !Number.isInteger(own) ? 1 : 0
  return withUnit(formatNumber(own, { locale: bakery.locale, digits: digits + more }), unit)
}

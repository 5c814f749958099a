import { formatNumber } from './number'
import { massInUnit } from './mass'
import { withUnit } from './with-unit'

const ouncesPerPound = 16

/**
 * A mass as a baker's scale shows it in ounces: whole pounds and the ounces left, rounded as one so that 16 oz never
 * stand beside pounds; ounces alone below a pound.
 * @param digits after the mark of the ounces, 0 to 6
 * @throws RangeError when the mass is not finite, or digits are out of range
 * Source: NIST Handbook 44, Appendix C: 1 lb = 16 oz = 453.59237 g.
 * @example poundsAndOunces(2182.9, { locale: 'en-US', digits: 0 }) // '4\u00a0lb\u00a013\u00a0oz'
 */
export function poundsAndOunces(
  massG: number,
  { locale, digits, signed = false }: { locale: string; digits: number; signed?: boolean },
): string {
  const unit = 10 ** digits
  const inAll = Math.round(massInUnit(Math.abs(massG), 'oz') * unit)
  const pounds = Math.floor(inAll / (ouncesPerPound * unit))
  const sign = massG < 0 ? -1 : 1
  if (pounds === 0) return withUnit(formatNumber((sign * inAll) / unit, { locale, digits, signed }), 'oz')
  const ounces = (inAll - pounds * ouncesPerPound * unit) / unit
  return `${withUnit(formatNumber(sign * pounds, { locale, digits: 0, signed }), 'lb')}\u00a0${withUnit(formatNumber(ounces, { locale, digits }), 'oz')}`
}

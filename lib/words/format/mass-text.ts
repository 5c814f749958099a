import { massInUnit, type MassUnit } from './mass'
import { plainNumber } from './plain-number'
import { withUnit } from './with-unit'

/**
 * A mass with as many digits as it was given with, six at most, and its unit.
 * @throws RangeError when the mass is not finite
 * @example massText(25_000, 'kg', 'en-GB') // '25\u00a0kg'
 */
export function massText(massG: number, unit: MassUnit, locale: string): string {
  return withUnit(plainNumber(massInUnit(massG, unit), { locale }), unit)
}

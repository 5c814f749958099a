import { formatNumber } from './number'
import { withUnit } from './with-unit'

/** A planned time in minutes, with a half where there is one. */
export function minutesOf(timeS: number, locale: string): string {
  return withUnit(formatNumber(timeS / 60, { locale, digits: timeS % 60 === 0 ? 0 : 1 }), 'min')
}

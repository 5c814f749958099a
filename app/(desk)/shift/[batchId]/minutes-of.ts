import 'server-only'
import { formatNumber } from '@/lib/words/format/number'
import { withUnit } from '@/lib/words/format/with-unit'

/** A planned time in minutes, with a half where there is one. */
export function minutesOf(timeS: number, locale: string): string {
  return withUnit(formatNumber(timeS / 60, { locale, digits: timeS % 60 === 0 ? 0 : 1 }), 'min')
}

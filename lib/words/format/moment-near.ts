import type { DateForm } from './date'
import { dateFormOf } from './kept-forms'

/**
 * A moment as somebody says it who stands at another one: the time alone on the same day, otherwise the day with it.
 * @throws RangeError for an invalid date or an unknown zone
 * @example momentNear(new Date('2026-03-02T05:30:00Z'), new Date('2026-03-02T04:00:00Z'), { locale: 'en-GB', timeZone: 'UTC' }) // '05:30'
 */
export function momentNear(moment: Date, from: Date, { locale, timeZone }: DateForm): string {
  const day = dateFormOf(locale, { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' })
  const time = { hour: '2-digit', minute: '2-digit', timeZone } as const
  return day.format(moment) === day.format(from)
    ? dateFormOf(locale, time).format(moment)
    : dateFormOf(locale, { ...time, weekday: 'short', day: 'numeric', month: 'short' }).format(moment)
}

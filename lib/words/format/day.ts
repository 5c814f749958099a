import { formatDate } from './date'

/**
 * A calendar day for reading. It belongs to no zone, so none can shift it.
 * @param day YYYY-MM-DD
 * @throws RangeError for a day that cannot be read
 * @example formatDay('2026-03-02', 'en-GB') // '2 Mar 2026'
 */
export function formatDay(day: string, locale: string): string {
  return formatDate(new Date(`${day}T00:00:00Z`), { locale, timeZone: 'UTC' })
}

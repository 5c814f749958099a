import { dateFormOf } from './kept-forms'

export type DateForm = {
  locale: string
  /** IANA name, 'Europe/Berlin': the bakery's own, never the server's. */
  timeZone: string
}

/**
 * The day on which a moment falls in the bakery's zone.
 * @throws RangeError for an invalid date or an unknown zone
 * @example formatDate(new Date('2026-03-02T05:30:00Z'), { locale: 'en-GB', timeZone: 'UTC' }) // '2 Mar 2026'
 */
export function formatDate(date: Date, { locale, timeZone }: DateForm): string {
  return dateFormOf(locale, { dateStyle: 'medium', timeZone }).format(date)
}

/**
 * Day and minute of a moment in the bakery's zone.
 * @throws RangeError for an invalid date or an unknown zone
 * @example formatDateTime(new Date('2026-03-02T05:30:00Z'), { locale: 'en-GB', timeZone: 'UTC' }) // '2 Mar 2026, 05:30'
 */
export function formatDateTime(date: Date, { locale, timeZone }: DateForm): string {
  return dateFormOf(locale, { dateStyle: 'medium', timeStyle: 'short', timeZone }).format(date)
}

import 'server-only'
import { dateFormOf } from '../words/format/kept-forms'

/**
 * The calendar day on which a moment falls in the bakery's zone, YYYY-MM-DD.
 * @throws RangeError for an invalid date or an unknown zone
 * @example dayInZone(new Date('2026-03-01T23:30:00Z'), 'Europe/Berlin') // '2026-03-02'
 */
export function dayInZone(at: Date, timeZone: string): string {
  const form = dateFormOf('en', {
    timeZone,
    calendar: 'gregory',
    numberingSystem: 'latn',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  })
  const parts = Object.fromEntries(form.formatToParts(at).map(({ type, value }) => [type, value]))
  return `${(parts.year ?? '').padStart(4, '0')}-${parts.month}-${parts.day}`
}

import 'server-only'
import { momentOf } from '../../moment-of'

/** A day without a time stands for its noon. */
const noon = '12:00'

/**
 * When a reading was taken, as a file says it: '2026-03-02 04:30', '02.03.2026 04:30' (day first), by the bakery's
 * clock; a day alone, which is its noon; or with an offset, '2026-03-02T04:30:00+01:00'. Other forms are not guessed:
 * 3/2 is March here and February there.
 * @returns null for what is none of these
 */
export function readTimeCell(text: string, timeZone: string): Date | null {
  if (/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2})$/.test(text)) {
    // The parser takes 30 February for 2 March.
    const isOfCalendar = momentOf(text.slice(0, 10), text.slice(11, 16), 'UTC').endsWith('Z')
    const at = new Date(text)
    return !isOfCalendar || Number.isNaN(at.getTime()) ? null : at
  }
  const parts =
    /^(?:(\d{4})-(\d{2})-(\d{2})|(\d{1,2})\.(\d{1,2})\.(\d{4}))(?:[ T]+(\d{1,2}:\d{2})(?::(\d{2}))?)?$/.exec(text)
  if (!parts) return null
  const [, year = parts[6], month = parts[5], day = parts[4], , , , time = noon, seconds = '0'] = parts
  const two = (digits: string | undefined) => (digits ?? '').padStart(2, '0')
  const moment = momentOf(`${year}-${two(month)}-${two(day)}`, time, timeZone)
  // What is no moment comes back as it was typed.
  return !moment.endsWith('Z') || Number(seconds) > 59 ? null : new Date(Date.parse(moment) + Number(seconds) * 1000)
}

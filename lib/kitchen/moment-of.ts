import 'server-only'
import { dateFormOf } from '../words/format/kept-forms'

/** Characters of a time of the day as it is typed. */
export const mostTimeLength = '00:00'.length

/**
 * A day and a time of a bakery as a moment: '2026-03-29' and '04:00' in its zone, as ISO 8601 in UTC. In the hour
 * that an autumn night has twice, the first.
 * @returns what was typed, when there is no such day or time, or the spring night skips it, for the command to refuse
 */
export function momentOf(day: string, time: string, timeZone: string): string {
  const typed = `${day.trim()} ${time.trim()}`
  const parts = /^(\d{4}-\d{2}-\d{2}) (\d{1,2}):(\d{2})$/.exec(typed)
  if (!parts) return typed
  const local = `${parts[1]}T${parts[2]?.padStart(2, '0')}:${parts[3]}`
  const asUtc = Date.parse(`${local}:00.000Z`)
  // The parser takes 31 February for 3 March.
  if (Number.isNaN(asUtc) || !new Date(asUtc).toISOString().startsWith(local)) return typed
  // Offsets lie within a day; of those that hold around it, those that lead back to the same reading of the clock.
  const offsets = [-1, 0, 1]
    .map((days) => offsetMs(new Date(asUtc + days * 86_400_000), timeZone))
    .filter(Number.isFinite)
  const moments = offsets
    .map((offset) => asUtc - offset)
    .filter((moment) => moment + offsetMs(new Date(moment), timeZone) === asUtc)
  return moments.length === 0 ? typed : new Date(Math.min(...moments)).toISOString()
}

/** How far the zone's clock is ahead of UTC at a moment, ms, to the minute; NaN beyond the years of four digits. */
function offsetMs(at: Date, timeZone: string): number {
  const form = dateFormOf('en-GB', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  })
  const of = Object.fromEntries(form.formatToParts(at).map(({ type, value }) => [type, value]))
  return (
    Date.parse(`${(of.year ?? '').padStart(4, '0')}-${of.month}-${of.day}T${of.hour}:${of.minute}:00.000Z`) -
    Math.floor(at.getTime() / 60_000) * 60_000
  )
}

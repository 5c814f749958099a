import 'server-only'
import { dateFormOf } from '../words/format/kept-forms'
import { dateOfDay, dayOfDate } from './day-of-date'
import { dayInZone } from './day-in-zone'

/** How a bakery tells one day's work from the next: by the clock of its zone, from an hour of its own on. */
export type BakeryClock = { timeZone: string; dayTurnsAtH: number }

/**
 * The day to which work at a moment belongs, YYYY-MM-DD: before the hour at which the day turns it is still the day
 * before, so that a night's shift is one day's work. What is bought, signed and looked at goes by the calendar instead.
 * @throws RangeError for an invalid date or an unknown zone
 * @example bakeryDay(new Date('2026-03-02T03:00:00Z'), { timeZone: 'UTC', dayTurnsAtH: 6 }) // '2026-03-01'
 */
export function bakeryDay(at: Date, { timeZone, dayTurnsAtH }: BakeryClock): string {
  const day = dayInZone(at, timeZone)
  return hourInZone(at, timeZone) < dayTurnsAtH ? dayBefore(day) : day
}

const dayMs = 24 * 60 * 60_000

function dayBefore(day: string): string {
  return dayOfDate(new Date(dateOfDay(day).getTime() - dayMs))
}

function hourInZone(at: Date, timeZone: string): number {
  const parts = dateFormOf('en', { timeZone, hour: '2-digit', hourCycle: 'h23' }).formatToParts(at)
  return Number(parts.find(({ type }) => type === 'hour')?.value)
}

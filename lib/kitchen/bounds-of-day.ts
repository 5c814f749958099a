import 'server-only'
import { bakeryDay, type BakeryClock } from './bakery-day'

/** No day's work is longer, also where clocks are set back. */
const longestMs = 27 * 60 * 60_000

/**
 * When the day's work that a moment belongs to began, and when it ends.
 * @throws RangeError for an invalid date or an unknown zone
 * @example boundsOfDay(new Date('2026-03-02T03:00:00Z'), { timeZone: 'UTC', dayTurnsAtH: 6 }).endsAt // 2026-03-02T06:00Z
 */
export function boundsOfDay(at: Date, clock: BakeryClock): { beganAt: Date; endsAt: Date } {
  const day = bakeryDay(at, clock)
  const isOfDay = (ms: number) => bakeryDay(new Date(ms), clock) === day
  const beganAt = turnBetween(at.getTime() - longestMs, at.getTime(), isOfDay)
  const endsAt = turnBetween(at.getTime(), at.getTime() + longestMs, (ms) => !isOfDay(ms))
  return { beganAt: new Date(beganAt), endsAt: new Date(endsAt) }
}

/** The first millisecond of which something holds, that does not hold at `from` and does at `to`. */
function turnBetween(from: number, to: number, holds: (ms: number) => boolean): number {
  let [before, after] = [from, to]
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2)
    if (holds(middle)) after = middle
    else before = middle
  }
  return after
}

import { dayInZone } from '../lib/kitchen/day-in-zone'
import { momentOf } from '../lib/kitchen/moment-of'
import { demoBakery } from './people'

const dayMs = 86_400_000
export const minuteMs = 60_000

export type BakeryClock = {
  /** When the demo is made: nothing in it is later. */
  now: Date
  /** A time of day of the bakery's own, so many of its days ago: `on(3, '04:10')`. */
  on(daysAgo: number, time: string): Date
}

/** The invented bakery's clock, set to a moment. @throws Error from `on` for a time that its day does not have */
export function bakeryClock(now: Date): BakeryClock {
  const today = Date.parse(dayInZone(now, demoBakery.timeZone))
  return {
    now,
    on(daysAgo, time) {
      const day = new Date(today - daysAgo * dayMs).toISOString().slice(0, 10)
      const moment = momentOf(day, time, demoBakery.timeZone)
      // Given back as it was typed.
      if (!moment.endsWith('Z')) throw new Error(`there is no ${time} on ${day}`)
      return new Date(moment)
    },
  }
}

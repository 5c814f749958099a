import type { Floor } from '../keep/facts'
import { clockAheadMs } from './clock-ahead'

const dayMs = 24 * 60 * 60_000

/**
 * When the bakery's day began, by the tablet's clock, ms. Of a floor that was fetched on a day that is over it is a turn of
 * the day since, to the hour by which clocks are changed.
 */
export function dayBegan(floor: { value: Pick<Floor, 'now' | 'day'>; at: number }, now: number): number {
  const aheadMs = clockAheadMs(floor)
  const ends = Date.parse(floor.value.day.endsAt) - aheadMs
  if (now < ends) return Date.parse(floor.value.day.beganAt) - aheadMs
  return ends + Math.floor((now - ends) / dayMs) * dayMs
}

import type { Floor } from '../keep/facts'
import type { Kept } from '../keep/tablet'
import { dayBegan } from './day-began'

/** What the gauge showed without a loaf, where that was read today: seed settles, and gauges are moved overnight. */
export function emptyGaugeToday(
  kept: Kept['emptyGauge'] | null,
  floor: { value: Pick<Floor, 'now' | 'day'>; at: number },
  now: number,
): Kept['emptyGauge'] | null {
  return kept && kept.at >= dayBegan(floor, now) ? kept : null
}

import type { PlanWater } from '@/lib/kitchen/trials/plan-types'
import type { PlanFormat } from '@/lib/words/format/plan-format'

/** The temperature that a thermometer shows in the mixing water; null where ice still melts in it, or where there is none to check. */
export function waterTemp(water: PlanWater, format: PlanFormat): string | null {
  if (water.outcome !== 'known' || water.way.parts.some(({ from }) => from === 'ice')) return null
  return format.tempFine(water.way.outcome === 'mix' ? water.waterTempC : water.way.nearestTempC)
}

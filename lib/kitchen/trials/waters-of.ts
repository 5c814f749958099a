import 'server-only'
import type { EquipmentKind } from '../../db/generated/enums'
import type { PlanWaters } from './plan-types'
import { usualWaters } from './way-of-water'

/** What is at hand for mixing water: of several, the hottest hot, the warmest tap (the others are mixed from it), the coldest chilled and the coldest ice. */
export function watersOf(
  equipment: readonly { kind: EquipmentKind; tempC: number | null; limitC: number | null }[],
): PlanWaters & { tap: { tempC: number } | null } {
  const of = (kind: EquipmentKind) =>
    equipment
      .flatMap((one) => (one.kind === kind && one.tempC !== null ? [{ tempC: one.tempC, limitC: one.limitC }] : []))
      .sort((a, b) => a.tempC - b.tempC)
  const hot = of('hot_water').at(-1)
  const tap = of('tap_water').at(-1)
  const [chilled] = of('chilled_water')
  const [ice] = of('ice')
  return {
    tap: tap ? { tempC: tap.tempC } : null,
    hot: hot ? { tempC: hot.tempC, mostC: hot.limitC ?? usualWaters.hot.mostC } : null,
    chilled: chilled ? { tempC: chilled.tempC } : null,
    ice: ice ? { tempC: ice.tempC } : null,
  }
}

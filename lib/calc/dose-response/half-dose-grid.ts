import type { DoseGroups } from './types'

const STEPS = 280
/** Beyond a thousand times the doses baked a saturating curve is a step or a straight line. */
const REACH = Math.log(1000)

/**
 * Logs of the doses of half the effect among which a fit is looked for: from a thousandth of the lowest dose above zero
 * to a thousand times the highest.
 * Source: common practice, no source.
 */
export function halfDoseGrid(data: DoseGroups): number[] {
  const doses = data.groups.map(({ dose }) => dose).filter((dose) => dose > 0)
  const [low, high] = [Math.log(doses[0]!) - REACH, Math.log(doses.at(-1)!) + REACH]
  return Array.from({ length: STEPS + 1 }, (_, i) => low + ((high - low) * i) / STEPS)
}

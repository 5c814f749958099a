import 'server-only'
import type { PlanFacts, PlanScale } from './plan-types'
import { scaleFor } from './scale-for'

/** The scale on which lines of one ingredient stand together. */
export function scaleOfLines(facts: Pick<PlanFacts, 'scale' | 'scales'>, together: readonly { dose: number | null; exactG: number }[]): PlanScale | null {
  const massG = together.reduce((sum, { exactG }) => sum + exactG, 0)
  const doses = together.flatMap(({ dose, exactG }) => (dose !== null && exactG > 0 ? [exactG] : []))
  return scaleFor({ scales: facts.scales, preferredId: facts.scale?.id ?? null, massG, tellG: Math.min(massG, ...doses) })
}

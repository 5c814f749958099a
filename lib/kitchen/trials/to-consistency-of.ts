import 'server-only'
import type { PlanArm } from './plan-types'

/** The ingredients for which a dough is mixed to the control's consistency, with as much water as that takes; each once. */
export function toConsistencyOf({ warnings }: Pick<PlanArm, 'warnings'>): string[] {
  return [
    ...new Set(
      warnings.flatMap(({ code, facts }) => (code === 'water-to-consistency' ? [String(facts.ingredient)] : [])),
    ),
  ]
}

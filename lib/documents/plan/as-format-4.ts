import 'server-only'
import type { PlanOfFormat3 } from './plan-of-format-3'
import type { PlanOfFormat4 } from './plan-of-format-4'

/** Fills in what a plan of format 3 leaves unsaid: its verdict was of any day, and nobody was declared blind. */
export function asFormat4(plan: PlanOfFormat3): PlanOfFormat4 {
  return { ...plan, format: 4, declared: { ...plan.declared, holdsFor: 'any_day', blinded: null } }
}

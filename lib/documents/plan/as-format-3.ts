import 'server-only'
import type { PlanOfFormat2 } from './plan-of-format-2'
import type { PlanOfFormat3 } from './plan-of-format-3'

/** Fills in what a plan of format 2 leaves unsaid: every line was as the rules have it. */
export function asFormat3(plan: PlanOfFormat2): PlanOfFormat3 {
  return {
    ...plan,
    format: 3,
    choices: [],
    arms: plan.arms.map((arm) => ({ ...arm, doses: arm.doses.map((dose) => ({ ...dose, allOfIt: false })) })),
  }
}

import 'server-only'
import { planFormat, type Plan, type PlanArm, type PlanDose } from './plan-types'

export type DoseOfFormat2 = Omit<PlanDose, 'allOfIt'>

/** A plan from when nothing could be chosen for a line, and what was replaced had an amount. */
export type PlanOfFormat2 = Omit<Plan, 'format' | 'choices' | 'arms'> & { format: 2; arms: (Omit<PlanArm, 'doses'> & { doses: DoseOfFormat2[] })[] }

/** Fills in what a plan of the second form leaves unsaid: every line was as the rules have it. */
export function planOfFormat2(plan: PlanOfFormat2): Plan {
  return { ...plan, format: planFormat, choices: [], arms: plan.arms.map((arm) => ({ ...arm, doses: arm.doses.map((dose) => ({ ...dose, allOfIt: false })) })) }
}

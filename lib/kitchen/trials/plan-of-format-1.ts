import 'server-only'
import { planFormat, type Plan, type PlanArm, type PlanDose } from './plan-types'

type New = 'how' | 'insteadOfId' | 'insteadOf' | 'equalBy' | 'controlG' | 'inAllG' | 'removedG'
type Format1 = Omit<Plan, 'format' | 'arms'> & { format: 1; arms: (Omit<PlanArm, 'doses'> & { doses: Omit<PlanDose, New>[] })[] }

/** A plan from before doses could lower, leave out or replace: every dose was so much more than the control. */
export function planOfFormat1(plan: Format1): Plan {
  return {
    ...plan,
    format: planFormat,
    arms: plan.arms.map((arm) => ({
      ...arm,
      doses: arm.doses.map((dose): PlanDose => {
        const controlG = arm.lines.reduce((sum, line) => sum + (line.ingredientId === dose.ingredientId ? line.controlG : 0), 0)
        return { ...dose, how: 'more', insteadOfId: null, insteadOf: null, equalBy: null, controlG, inAllG: controlG + dose.productG, removedG: 0 }
      }),
    })),
  }
}

export type PlanOfFormat1 = Format1

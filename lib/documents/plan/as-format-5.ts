import 'server-only'
import type { PlanOfFormat4 } from './plan-of-format-4'
import type { PlanOfFormat5 } from './plan-of-format-5'

/** Fills in what a plan of format 4 leaves unsaid: its chance took a difference as the same on every mixing day. */
export function asFormat5({ power, ...plan }: PlanOfFormat4): PlanOfFormat5 {
  return {
    ...plan,
    format: 5,
    power: power.outcome === 'simulated' ? { ...power, armByDay: null, otherwise: null } : power,
  }
}

import 'server-only'
import { linesToWeigh, type ToWeigh } from '../trials/lines-to-weigh'
import { readPlanText } from '../trials/plan-text'
import type { PlanWater } from '../trials/plan-types'
import { toConsistencyOf } from '../trials/to-consistency-of'

/**
 * What goes on the scales for one batch, how its water is made, and for what its water is only a beginning, as its plan was approved.
 * @throws Error for a batch whose plan is not there, which nothing writes
 */
export function mixingOf(batchId: string, armPosition: number, { planText, planHash }: { planText: string | null; planHash: string | null }): { toWeigh: ToWeigh; water: PlanWater; toConsistency: string[] } {
  const plan = planText === null || planHash === null ? null : readPlanText(planText, planHash)
  const arm = plan?.arms.find(({ position }) => position === armPosition)
  if (!plan || !arm) throw new Error(`batch ${batchId} has no plan`)
  return { toWeigh: linesToWeigh(plan, arm), water: arm.water, toConsistency: toConsistencyOf(arm) }
}

import 'server-only'
import type { Unread } from '../../documents/open-document'
import { readPlan } from '../../documents/plan/read-plan'
import { linesToWeigh, type ToWeigh } from '../trials/lines-to-weigh'
import type { PlanWater } from '../trials/plan-types'
import { toConsistencyOf } from '../trials/to-consistency-of'

export type Mixing = { outcome: 'read'; toWeigh: ToWeigh; water: PlanWater; toConsistency: string[] } | Unread

/**
 * What goes on the scales for one batch, how its water is made, and for what its water is only a beginning, as its plan
 * was approved; where that cannot be read, that: readings go on without it.
 * @throws Error for a batch whose plan is not there, which nothing writes
 */
export function mixingOf(
  batchId: string,
  armPosition: number,
  { planText, planHash }: { planText: string | null; planHash: string | null },
): Mixing {
  if (planText === null || planHash === null) throw new Error(`batch ${batchId} has no plan`)
  const read = readPlan(planText, planHash)
  if (read.outcome !== 'read') return read
  const { plan } = read
  const arm = plan.arms.find(({ position }) => position === armPosition)
  if (!arm) throw new Error(`batch ${batchId} has no arm in its plan`)
  return { outcome: 'read', toWeigh: linesToWeigh(plan, arm), water: arm.water, toConsistency: toConsistencyOf(arm) }
}

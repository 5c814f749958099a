import 'server-only'
import { codesInAll } from '../trials/drawn-codes'
import { orderOfPlan } from '../trials/order-of-plan'
import type { Plan, PlanBatch } from '../trials/plan-types'

export type PlannedOrder = Pick<Plan, 'arms'> & { order: NonNullable<Plan['order']> }

/** How many doughs of each kind a mixing day of the plan has. */
export function doughsOfEachKind({ order }: Pick<PlannedOrder, 'order'>): number {
  const counts = new Map<string, number>()
  for (const { day, arm } of order.batches) counts.set(`${day} ${arm}`, (counts.get(`${day} ${arm}`) ?? 0) + 1)
  return Math.max(0, ...counts.values())
}

/**
 * Order of a mixing day that was not planned: what the plan's own draw would have given had it been asked for as many
 * days, so that nobody draws until an order pleases, and anybody can draw it again.
 * @param number of the day, beyond those of the plan
 * @returns doughs by place, with what to clean down from before each; null where there are no codes for so many days
 */
export function orderOfAddedDay(plan: PlannedOrder, number: number): Omit<PlanBatch, 'code'>[] | null {
  const batchesPerArm = doughsOfEachKind(plan)
  if (number * batchesPerArm * plan.arms.length > codesInAll) return null
  const drawn = orderOfPlan({
    seed: plan.order.seed,
    declared: { mixingDays: number, batchesPerArm },
    arms: plan.arms,
  })
  return drawn.plan.batches.flatMap(({ code: _, ...batch }) => (batch.day === number ? [batch] : []))
}

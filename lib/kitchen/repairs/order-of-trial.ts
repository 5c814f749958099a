import 'server-only'
import type { Tx } from '../../db/client'
import { sureOf } from '../sure-of'
import { planOfText } from '../trials/plan-of-text'
import type { PlannedOrder } from './order-of-added-day'

/** The order that was drawn for an approved trial, and its doughs. @throws Refusal 'unknown-format' | 'damaged-text' */
export async function orderOfTrial(tx: Tx, bakeryId: string, trialId: string): Promise<PlannedOrder> {
  const { planText, planHash } = await tx.trial.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: { planText: true, planHash: true },
  })
  const { arms, order } = planOfText(sureOf(planText, 'an approved plan'), sureOf(planHash, 'the hash of a plan'))
  return { arms, order: sureOf(order, 'the order of an approved plan') }
}

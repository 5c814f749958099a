import 'server-only'
import { createHash } from 'node:crypto'
import { canonicalText } from '../../db/append-audit'
import { planOfFormat1, type PlanOfFormat1 } from './plan-of-format-1'
import { planOfFormat2, type PlanOfFormat2 } from './plan-of-format-2'
import { planFormat, type Plan } from './plan-types'

/** A plan in its one canonical form, and the hash of that: what is approved. */
export function textOfPlan(plan: Plan): { text: string; hash: string } {
  const text = canonicalText(plan)
  return { text, hash: hashOf(text) }
}

/**
 * Reads a plan that was proposed, in this form or a former one.
 * @throws Error when it is not the text that was hashed, or not in a form that is known
 */
export function readPlanText(text: string, hash: string): Plan {
  if (hashOf(text) !== hash) throw new Error('the text of a plan does not fit its hash')
  const plan = JSON.parse(text) as { format?: unknown }
  // The hash was just checked, so this is what textOfPlan wrote, now or when forms had another number.
  if (plan.format === 1) return planOfFormat2(planOfFormat1(plan as PlanOfFormat1))
  if (plan.format === 2) return planOfFormat2(plan as PlanOfFormat2)
  if (plan.format !== planFormat) throw new Error(`unknown form of a plan: ${String(plan.format)}`)
  return plan as Plan
}

function hashOf(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex')
}

import 'server-only'
import { canonicalText } from '../canonical-text'
import { hashOfText } from '../hash-of-text'
import { planOfFormat5, type PlanOfFormat5 } from './plan-of-format-5'

/** What a plan says, whatever the format of its text. */
export type PlanContent = Omit<PlanOfFormat5, 'format'>

/**
 * A plan in its one text, and the hash of that: what is approved.
 * @throws ZodError for anything that could not be read back
 */
export function textOfPlan(plan: PlanContent): { text: string; hash: string } {
  const text = canonicalText(planOfFormat5.parse({ format: 5, ...plan }))
  return { text, hash: hashOfText(text) }
}

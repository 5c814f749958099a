import 'server-only'
import { canonicalText } from '../canonical-text'
import { hashOfText } from '../hash-of-text'
import { planOfFormat3, type PlanOfFormat3 } from './plan-of-format-3'

/** What a plan says, whatever the format of its text. */
export type PlanContent = Omit<PlanOfFormat3, 'format'>

/**
 * A plan in its one text, and the hash of that: what is approved.
 * @throws ZodError for anything that could not be read back
 */
export function textOfPlan(plan: PlanContent): { text: string; hash: string } {
  const text = canonicalText(planOfFormat3.parse({ format: 3, ...plan }))
  return { text, hash: hashOfText(text) }
}

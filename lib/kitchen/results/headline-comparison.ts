import 'server-only'
import { analyseOnce } from './analyse-once'
import type { Comparison } from './compare-arms'
import { foundLaterCounted } from './counted-otherwise'
import { type HeadlineComparison, headlineFrom } from './headline-from'
import type { DeclaredTrial, MeasuredBatch } from './trial-facts'

/**
 * What a headline rests on. Where doughs were set aside for what was found later, and what decides was read of them, it is
 * the less favourable of the comparison without and with them: whoever looks for a cause after the reading finds one for
 * the doughs that displease.
 * @param comparison without them; null where nothing is compared
 * @param found causes that were found later
 * @throws Refusal 'took-too-long' | 'not-worked-out'
 */
export async function headlineComparison(q: {
  declared: DeclaredTrial
  batches: readonly MeasuredBatch[]
  comparison: Comparison | null
  found: readonly { batchId: string; signed: object | null }[]
}): Promise<HeadlineComparison> {
  const counted = q.comparison && foundLaterCounted(q.batches, q.found, q.declared.batchesPerArm)
  const withThem = counted && (await analyseOnce(q.declared, counted.batches)).comparison
  return headlineFrom(q.comparison, withThem && { codes: counted.codes, comparison: withThem })
}

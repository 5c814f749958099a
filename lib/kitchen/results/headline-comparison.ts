import 'server-only'
import { analyseOnce } from './analyse-once'
import type { Comparison } from './compare-arms'
import { setAsideCounted } from './counted-otherwise'
import { lessFavourable } from './less-favourable'
import type { DeclaredTrial, MeasuredBatch } from './trial-facts'

export type HeadlineComparison = {
  comparison: Comparison | null
  /** Codes of the doughs without and with which it is the less favourable; none where it is the comparison as it is. */
  lessFavourableOf: string[]
}

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
  const signed = new Set(q.found.flatMap(({ batchId, signed: by }) => (by ? batchId : [])))
  const counted = q.comparison && setAsideCounted(q.batches, signed, q.declared.batchesPerArm)
  const withThem = counted && (await analyseOnce(q.declared, counted.batches)).comparison
  return q.comparison && counted && withThem
    ? { comparison: lessFavourable(q.comparison, withThem), lessFavourableOf: counted.codes }
    : { comparison: q.comparison, lessFavourableOf: [] }
}

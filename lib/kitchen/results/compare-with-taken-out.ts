import 'server-only'
import { analyseOnce } from './analyse-once'
import type { Comparison } from './compare-arms'
import { takenOutCounted } from './taken-out-counted'
import type { DeclaredTrial, MeasuredBatch } from './trial-facts'

type WithTakenOut = {
  /** Codes of the doughs that are counted here and were taken out. */
  codes: string[]
  comparison: Comparison
}

/**
 * The comparison as it would be had nobody taken out a dough of which the deciding measure was read, so that both can
 * be looked at; null where there is none such, or nothing is compared yet.
 * @throws Refusal 'took-too-long' | 'not-worked-out'
 */
export async function compareWithTakenOut(
  declared: DeclaredTrial,
  batches: readonly MeasuredBatch[],
): Promise<WithTakenOut | null> {
  const taken = takenOutCounted(batches, declared.batchesPerArm)
  if (!taken) return null
  const { comparison } = await analyseOnce(declared, taken.batches)
  return comparison && { codes: taken.codes, comparison }
}

import 'server-only'
import { onceFor } from '../heavy/once-for'
import { analyseOnce } from './analyse-once'
import type { Comparison } from './compare-arms'
import { countedOtherwise, type CountedOtherwise } from './counted-otherwise'
import type { DeclaredTrial, MeasuredBatch } from './trial-facts'

/** By the judged readings, which are of one trial as it was declared. */
const counted = onceFor<ReturnType<typeof countedOtherwise>>()

export type ComparedOtherwise = {
  /** Codes of the doughs that are counted otherwise here. */
  codes: string[]
  comparison: Comparison
}

/**
 * The comparison as it would be had nobody taken out a dough of which the deciding measure was read, and as it would be
 * going by what was weighed last, so that all can be looked at; null where that is the same doughs, or nothing is
 * compared yet.
 * @throws Refusal 'took-too-long' | 'not-worked-out'
 */
export async function compareOtherwise(declared: DeclaredTrial, batches: readonly MeasuredBatch[]) {
  const compared = async (otherwise: CountedOtherwise | null): Promise<ComparedOtherwise | null> => {
    if (!otherwise) return null
    const { comparison } = await analyseOnce(declared, otherwise.batches)
    return comparison && { codes: otherwise.codes, comparison }
  }
  const { withTakenOut, asLastWeighed } = counted(batches, () => countedOtherwise(batches, declared.batchesPerArm))
  const [taken, weighed] = await Promise.all([compared(withTakenOut), compared(asLastWeighed)])
  return { withTakenOut: taken, asLastWeighed: weighed }
}

import 'server-only'
import { analyseOnce } from './analyse-once'
import type { Comparison } from './compare-arms'
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
  const isRead = ({ state, pieces }: MeasuredBatch) =>
    (state === 'lost' || state === 'set_aside') && pieces.some(({ value }) => value !== null)
  const codes = batches.filter(isRead).map(({ code }) => code)
  if (codes.length === 0) return null
  const { comparison } = await analyseOnce(
    declared,
    batches.map((batch) => (isRead(batch) ? { ...batch, state: 'measured' } : batch)),
  )
  return comparison && { codes, comparison }
}

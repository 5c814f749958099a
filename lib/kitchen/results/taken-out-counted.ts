import 'server-only'
import type { MeasuredBatch } from './trial-facts'

/** The doughs that were taken out after they were read, and all of them as if nobody had; null where there is none such. */
export function takenOutCounted(
  batches: readonly MeasuredBatch[],
): { codes: string[]; batches: MeasuredBatch[] } | null {
  const isRead = ({ state, pieces }: MeasuredBatch) =>
    (state === 'lost' || state === 'set_aside') && pieces.some(({ value }) => value !== null)
  const codes = batches.filter(isRead).map(({ code }) => code)
  return codes.length === 0
    ? null
    : { codes, batches: batches.map((batch) => (isRead(batch) ? { ...batch, state: 'measured' } : batch)) }
}

import 'server-only'
import type { MeasuredBatch } from './trial-facts'

/**
 * The doughs that were taken out after they were read, and all of them as if nobody had; null where there is none such.
 * @param only ids of those that are asked about; all where nobody says
 */
export function takenOutCounted(
  batches: readonly MeasuredBatch[],
  only?: ReadonlySet<string>,
): { codes: string[]; batches: MeasuredBatch[] } | null {
  const isRead = ({ id, state, pieces }: MeasuredBatch) =>
    (state === 'lost' || state === 'set_aside') && (only?.has(id) ?? true) && pieces.some(({ value }) => value !== null)
  const codes = batches.filter(isRead).map(({ code }) => code)
  return codes.length === 0
    ? null
    : { codes, batches: batches.map((batch) => (isRead(batch) ? { ...batch, state: 'measured' } : batch)) }
}

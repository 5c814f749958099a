import 'server-only'
import type { MeasuredBatch } from './trial-facts'

/**
 * The doughs that were taken out after they were read, and all doughs as if nobody had: they count, and what was baked
 * again for them does not, so that no more doughs of a kind are compared than planned. Null where there is none such.
 * @param batchesPerArm doughs of a kind on a mixing day, as planned
 */
export function takenOutCounted(
  batches: readonly MeasuredBatch[],
  batchesPerArm: number,
): { codes: string[]; batches: MeasuredBatch[] } | null {
  const isRead = ({ state, pieces }: MeasuredBatch) =>
    (state === 'lost' || state === 'set_aside') && pieces.some(({ value }) => value !== null)
  const codes = batches.filter(isRead).map(({ code }) => code)
  if (codes.length === 0) return null
  const put = batches.map((batch): MeasuredBatch => (isRead(batch) ? { ...batch, state: 'measured' } : batch))
  const counts = new Map<string, number>()
  const beyond = new Set(
    put
      .filter(({ state }) => state === 'measured')
      .sort((a, b) => a.plannedOrder - b.plannedOrder)
      .filter(({ day, arm }) => {
        const place = `${day} ${arm}`
        const count = (counts.get(place) ?? 0) + 1
        counts.set(place, count)
        return count > batchesPerArm
      }),
  )
  return { codes, batches: put.map((batch) => (beyond.has(batch) ? { ...batch, state: 'not_baked' } : batch)) }
}

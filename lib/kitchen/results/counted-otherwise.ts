import 'server-only'
import type { MeasuredBatch } from './trial-facts'

/** Doughs of a trial with some of them counted otherwise, and the codes of those. */
export type CountedOtherwise = { codes: string[]; batches: MeasuredBatch[] }

/**
 * The ways in which the doughs of a trial could count that somebody may ask for: with those that were read and taken out,
 * by hand or by what was weighed, as if nobody had; and going by what was weighed last, where that says another thing
 * than what stood when they were read. Null where it would be the same doughs.
 * @param batchesPerArm doughs of a kind on a mixing day, as planned: of what was baked again no more are compared
 */
export function countedOtherwise(
  batches: readonly MeasuredBatch[],
  batchesPerArm: number,
): {
  withTakenOut: CountedOtherwise | null
  asLastWeighed: CountedOtherwise | null
} {
  const read = batches.filter(({ pieces }) => pieces.some(({ value }) => value !== null))
  return {
    withTakenOut: otherwise(
      batches,
      batchesPerArm,
      read.filter(
        ({ state, isOutOfItsArm }) =>
          state === 'lost' || state === 'set_aside' || (state === 'measured' && isOutOfItsArm),
      ),
      (batch) => ({ ...batch, state: 'measured', isOutOfItsArm: false }),
    ),
    asLastWeighed: otherwise(
      batches,
      batchesPerArm,
      read.filter(
        ({ state, isOutOfItsArm, isOutAsLastWeighed }) => state === 'measured' && isOutOfItsArm !== isOutAsLastWeighed,
      ),
      (batch) => ({ ...batch, isOutOfItsArm: batch.isOutAsLastWeighed }),
    ),
  }
}

/**
 * With those doughs counted that were read, and set aside for a cause that was found later and signed; null where there is
 * none such.
 * @param found causes that were found later; @param batchesPerArm as in countedOtherwise
 */
export function foundLaterCounted(
  batches: readonly MeasuredBatch[],
  found: readonly { batchId: string; signed: object | null }[],
  batchesPerArm: number,
): CountedOtherwise | null {
  const ids = new Set(found.flatMap(({ batchId, signed }) => (signed ? batchId : [])))
  const those = batches.filter(
    ({ id, state, pieces }) => ids.has(id) && state === 'set_aside' && pieces.some(({ value }) => value !== null),
  )
  return otherwise(batches, batchesPerArm, those, (batch) => ({ ...batch, state: 'measured' }))
}

function otherwise(
  batches: readonly MeasuredBatch[],
  batchesPerArm: number,
  those: readonly MeasuredBatch[],
  as: (batch: MeasuredBatch) => MeasuredBatch,
): CountedOtherwise | null {
  return those.length === 0
    ? null
    : {
        codes: those.map(({ code }) => code),
        batches: noMoreThanPlanned(
          batches.map((batch) => (those.includes(batch) ? as(batch) : batch)),
          batchesPerArm,
        ),
      }
}

/** Without what was baked again for doughs that count here, so that no more doughs of a kind are compared than planned. */
function noMoreThanPlanned(batches: readonly MeasuredBatch[], batchesPerArm: number): MeasuredBatch[] {
  const counts = new Map<string, number>()
  const beyond = new Set(
    batches
      .filter(({ state, isOutOfItsArm }) => state === 'measured' && !isOutOfItsArm)
      .sort((a, b) => a.plannedOrder - b.plannedOrder)
      .filter(({ day, arm }) => {
        const place = `${day} ${arm}`
        const count = (counts.get(place) ?? 0) + 1
        counts.set(place, count)
        return count > batchesPerArm
      }),
  )
  return batches.map((batch) => (beyond.has(batch) ? { ...batch, state: 'not_baked' } : batch))
}

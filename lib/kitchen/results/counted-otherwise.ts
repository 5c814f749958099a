import 'server-only'
import type { MeasuredBatch } from './trial-facts'

/** Doughs of a trial with some of them counted otherwise, and the codes of those. */
export type CountedOtherwise = { codes: string[]; batches: MeasuredBatch[] }

/**
 * The ways in which the doughs of a trial could count that somebody may ask for: with those that were read and taken out,
 * by hand or by what was weighed, as if nobody had; and going by what was weighed last, where that says another thing
 * than what stood when they were read. Null where it would be the same doughs.
 */
export function countedOtherwise(batches: readonly MeasuredBatch[]): {
  withTakenOut: CountedOtherwise | null
  asLastWeighed: CountedOtherwise | null
} {
  const read = batches.filter(({ pieces }) => pieces.some(({ value }) => value !== null))
  return {
    withTakenOut: otherwise(
      batches,
      read.filter(
        ({ state, isOutOfItsArm }) =>
          state === 'lost' || state === 'set_aside' || (state === 'measured' && isOutOfItsArm),
      ),
      (batch) => ({ ...batch, state: 'measured', isOutOfItsArm: false }),
    ),
    asLastWeighed: otherwise(
      batches,
      read.filter(
        ({ state, isOutOfItsArm, isOutAsLastWeighed }) => state === 'measured' && isOutOfItsArm !== isOutAsLastWeighed,
      ),
      (batch) => ({ ...batch, isOutOfItsArm: batch.isOutAsLastWeighed }),
    ),
  }
}

/**
 * Of these doughs those counted that were set aside although they were read; null where there is none such.
 * @param ids of doughs
 */
export function setAsideCounted(batches: readonly MeasuredBatch[], ids: ReadonlySet<string>): CountedOtherwise | null {
  const those = batches.filter(
    ({ id, state, pieces }) => ids.has(id) && state === 'set_aside' && pieces.some(({ value }) => value !== null),
  )
  return otherwise(batches, those, (batch) => ({ ...batch, state: 'measured' }))
}

function otherwise(
  batches: readonly MeasuredBatch[],
  those: readonly MeasuredBatch[],
  as: (batch: MeasuredBatch) => MeasuredBatch,
): CountedOtherwise | null {
  return those.length === 0
    ? null
    : {
        codes: those.map(({ code }) => code),
        batches: batches.map((batch) => (those.includes(batch) ? as(batch) : batch)),
      }
}

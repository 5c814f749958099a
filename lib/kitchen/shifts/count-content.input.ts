import { textOfCount } from '../../documents/count/text-of-count.input'
import type { CountEntry } from './log-count.input'

/** What a count's hash is of: everything that was entered but its id. */
export function countContentText(entry: CountEntry): string {
  const { batchId, clockAheadS, given, good, made, sampled, sold, takenAt, wasted } = entry
  return textOfCount({
    batch: batchId,
    clockAheadS: clockAheadS ?? null,
    given: given ?? null,
    good,
    made,
    sampled: sampled ?? null,
    sold: sold ?? null,
    takenAt,
    wasted: wasted ?? null,
  })
}

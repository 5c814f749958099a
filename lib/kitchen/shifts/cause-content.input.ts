import { textOfCause } from '../../documents/cause/text-of-cause.input'
import type { CauseEntry } from './log-cause.input'

/** What the hash of a cause is of: everything that was noted but its id. */
export function causeContentText({ batchId, takenAt, what }: CauseEntry): string {
  return textOfCause({ batch: batchId, takenAt, what })
}

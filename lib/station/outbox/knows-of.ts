import type { KeptList } from '../keep/weigh-facts'
import type { OutboxEntry } from './entry'

/** Whether somebody on the tablet knows of the dough of an entry what the entry could tell: they wrote it, or have opened its weights. */
export function knowsOf(
  entry: OutboxEntry,
  personId: string | null,
  lists: readonly Pick<KeptList, 'batchId' | 'openedBy'>[],
): boolean {
  if (personId === null) return false
  const of = 'batchId' in entry.payload ? entry.payload.batchId : null
  return (
    entry.personId === personId || lists.some(({ batchId, openedBy }) => batchId === of && openedBy.includes(personId))
  )
}

import { stationCauses } from '../../words/en/station-causes'
import type { EntryOf, OutboxEntry } from './entry'

/** What this tablet has noted to have gone wrong with a dough, in its order. */
export function causesOfDough(batchId: string, entries: readonly OutboxEntry[]): EntryOf<'cause'>[] {
  return entries.filter((entry) => entry.kind === 'cause').filter(({ payload }) => payload.batchId === batchId)
}

/** Whether the dough was said to be lost, so that nothing more is done with it but to take it out. */
export function isSaidLost(batchId: string, entries: readonly OutboxEntry[]): boolean {
  return causesOfDough(batchId, entries).some(({ payload }) => payload.what === stationCauses.what.lost)
}

import type { FloorMeasure, FloorPlace } from '../keep/facts'
import { placeKey } from '../keep/place-key'
import type { EntryState, OutboxEntry } from './entry'

export type StoodPlace = FloorPlace & {
  /** What stands there: what this tablet kept, else what the book had when it was last asked. */
  stands: { value: string; unit: string; who: string; at: string; state: Exclude<EntryState, 'attention'> } | null
}

/** The places of a measure with what stands in each; what the book refused stands nowhere. */
export function placesWithEntries(
  batchId: string,
  { id: measureId, places }: Pick<FloorMeasure, 'id' | 'places'>,
  entries: readonly OutboxEntry[],
): StoodPlace[] {
  const own = new Map(
    entries
      .filter((entry) => entry.kind === 'reading' && entry.state !== 'attention')
      .map((entry) => [placeKey(entry.payload), entry]),
  )
  return places.map((place) => {
    const entry = own.get(placeKey({ batchId, measureId, ...place }))
    const { reading } = place
    // In the book stands what the book says stands, once it says so: it may have been corrected since.
    if (entry && entry.state !== 'attention' && (entry.state !== 'book' || !reading))
      return {
        ...place,
        stands: {
          value: entry.payload.value,
          unit: entry.payload.unit,
          who: entry.personName,
          at: entry.payload.takenAt,
          state: entry.state,
        },
      }
    return { ...place, stands: reading && { ...reading, state: 'book' } }
  })
}

/** How many places of a dough have nothing yet, of the measures without which it is not read whole. */
export function toRead(
  { id, measures }: { id: string; measures: readonly FloorMeasure[] },
  entries: readonly OutboxEntry[],
): number {
  return measures
    .filter(({ isWanted }) => isWanted)
    .reduce(
      (sum, measure) => sum + placesWithEntries(id, measure, entries).filter(({ stands }) => stands === null).length,
      0,
    )
}

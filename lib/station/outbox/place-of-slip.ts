import type { FloorDough } from '../keep/facts'
import type { At } from '../keep/tablet'
import type { OutboxEntry } from './entry'
import { placesWithEntries } from './stand-of-place'

/**
 * Where a slip leads: to what is read of its piece; and while a measure is read piece by piece, straight to the next
 * number of that measure, where there is one to read.
 */
export function placeOfSlip(
  dough: FloorDough,
  piece: number | null,
  measureId: string | null,
  entries: readonly OutboxEntry[],
): Partial<At> {
  const measure = dough.measures.find(({ id }) => id === measureId)
  const place =
    measure &&
    placesWithEntries(dough.id, measure, entries).find((each) => each.piece === piece && each.stands === null)
  return piece !== null && place ? { measureId, piece, repeat: place.repeat } : { piece }
}

import { takesRepeat } from '../../kitchen/readings/takes-repeat.input'
import type { FloorMeasure, FloorPlace } from '../keep/facts'
import { placeKey } from '../keep/place-key'
import type { EntryOf, EntryState, OutboxEntry } from './entry'
import { holds } from './holds'

export type Standing = {
  /** Of the reading or correction that it is. */
  id: string
  value: string
  unit: string
  inBase: number
  who: string
  personId: string
  /** When it was read. */
  at: string
  /** When it came into the book, or on to this tablet. */
  receivedAt: string
  state: EntryState
}

export type StoodPlace = Pick<FloorPlace, 'piece' | 'factorLevel' | 'repeat'> & {
  /** What stands there: what this tablet kept, else what the book had when it was last asked, put right by what this tablet kept. */
  stands: Standing | null
  /** Corrections that came when somebody else had corrected it: the book keeps them aside. */
  lost: { value: string; unit: string }[]
}

type Measure = Pick<FloorMeasure, 'id' | 'places' | 'repeats' | 'repeatLimit' | 'toBase'>
type Correction = EntryOf<'correction'>

/**
 * The places of a measure with what stands in each; what the book refused stands nowhere. Two that disagree open a third
 * place, and one that nobody needs any more is none.
 */
export function placesWithEntries(batchId: string, measure: Measure, entries: readonly OutboxEntry[]): StoodPlace[] {
  const { id: measureId, places, repeats, toBase } = measure
  const inBase = (value: string) => Number(value) * toBase.times + toBase.plus
  const own = new Map<string, Standing>()
  const corrections: Correction[] = []
  for (const entry of entries) {
    if (entry.kind === 'correction') corrections.push(entry)
    if (entry.kind !== 'reading' || !holds(entry)) continue
    const { value, unit, takenAt } = entry.payload
    own.set(
      placeKey(entry.payload),
      standing(entry, { value, unit, inBase: inBase(value), at: takenAt, receivedAt: takenAt }),
    )
  }
  const ofPlace = ({ piece, factorLevel, repeat, reading }: FloorPlace): StoodPlace => {
    const key = placeKey({ batchId, measureId, piece, repeat })
    const entry = own.get(key)
    // In the book stands what the book says stands, once it says so: it may have been corrected since.
    let stands: Standing | null =
      entry && (entry.state !== 'book' || !reading) ? entry : reading && { ...reading, state: 'book' }
    for (let next = nextOf(stands, corrections); stands && next; next = nextOf(stands, corrections)) {
      const { value, unit } = next.payload
      stands = standing(next, { value, unit, inBase: inBase(value), at: stands.at, receivedAt: next.shown.at })
    }
    const lost = corrections
      .filter(({ state, payload, shown }) => state === 'aside' && placeKey({ ...shown, ...payload }) === key)
      .map(({ payload: { value, unit } }) => ({ value, unit }))
    return { piece, factorLevel, repeat, stands, lost }
  }
  const pieces = new Map<number | null, FloorPlace[]>()
  for (const place of places) pieces.set(place.piece, [...(pieces.get(place.piece) ?? []), place])
  return [...pieces.values()].flatMap((ofPiece) => {
    const [first] = ofPiece
    if (!first) return []
    const further = (at: number): StoodPlace => ofPlace({ ...first, repeat: at, reading: null })
    const there = ofPiece.map(ofPlace).filter(({ repeat, stands }) => repeat <= repeats || stands !== null)
    // A third that lies here alone is none of the floor's places yet.
    let next = further(there.length + 1)
    for (; next.stands !== null; next = further(there.length + 1)) there.push(next)
    const read = there.flatMap(({ repeat, stands }) => (stands ? [{ repeat, value: stands.inBase }] : []))
    const isOpen = next.repeat > repeats && read.length === there.length && takesRepeat(next.repeat, measure, read)
    return isOpen ? [...there, next] : there
  })
}

function standing(
  { id, personName, personId, state }: OutboxEntry,
  said: Pick<Standing, 'value' | 'unit' | 'inBase' | 'at' | 'receivedAt'>,
): Standing {
  return { ...said, id, who: personName, personId, state }
}

/** What takes the place of what stands: one that lost takes nobody's. */
function nextOf(stands: Standing | null, corrections: readonly Correction[]): Correction | undefined {
  return corrections.find(
    (entry) => holds(entry) && entry.state !== 'aside' && entry.payload.supersedesId === stands?.id,
  )
}

/** What was read last of a measure on a dough; null before anything was. */
export function lastRead(places: readonly StoodPlace[]): (StoodPlace & { stands: Standing }) | null {
  const read = places.flatMap(({ stands, ...place }) => (stands ? [{ ...place, stands }] : []))
  return read.sort((a, b) => Date.parse(b.stands.at) - Date.parse(a.stands.at))[0] ?? null
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

import 'server-only'
import type { AmendmentContent } from '../../documents/amendment/text-of-amendment'
import { currentReadings } from '../readings/current-readings'
import type { TrialContent } from '../results/content-of-trial'

type ContentReading = TrialContent['readings'][number]
type OldReading = NonNullable<Extract<AmendmentContent['change'], { kind: 'reading' }>['old']>

/** Where a reading belongs: one repeat of one measure at one piece of a dough, or at the dough itself. */
export type RepeatPlace = {
  dough: string
  measure: string
  piece: number | null
  factorLevel: string | null
  repeat: number
}

/** The readings that hold in a content: what was corrected has given way. */
export function holdingReadings(content: TrialContent): ContentReading[] {
  return currentReadings(
    content.readings.map((reading) => ({
      reading,
      id: reading.id,
      supersedesId: reading.supersedes,
      receivedAt: new Date(reading.receivedAt),
    })),
  ).map(({ reading }) => reading)
}

/** The readings that hold where a thing is read, whatever their repeat. */
export function readingsAt(content: TrialContent, place: Omit<RepeatPlace, 'repeat'>): ContentReading[] {
  return holdingReadings(content).filter(
    ({ dough, measure, piece, factorLevel }) =>
      dough === place.dough && measure === place.measure && piece === place.piece && factorLevel === place.factorLevel,
  )
}

/** The reading that holds for one of a content, however often that was corrected; null where there is none such. */
export function readingFor(content: TrialContent, readingId: string): ContentReading | null {
  let found = content.readings.find(({ id }) => id === readingId) ?? null
  const holding = new Set(holdingReadings(content))
  while (found && !holding.has(found)) {
    const { id } = found
    found = content.readings.find(({ supersedes }) => supersedes === id) ?? null
  }
  return found
}

/** A closed reading as an amendment names it. */
export function oldOf(closed: ContentReading | null): OldReading | null {
  return (
    closed && {
      reading: closed.id,
      piece: closed.piece,
      repeat: closed.repeat,
      value: closed.value,
      valueEntered: closed.valueEntered,
      unitEntered: closed.unitEntered,
    }
  )
}

/** The reading that holds in a place; null where none does. */
export function readingAtPlace(content: TrialContent, place: RepeatPlace): ContentReading | null {
  return readingsAt(content, place).find(({ repeat }) => repeat === place.repeat) ?? null
}

import { holds } from '../outbox/holds'
import { keepEntry, type KeptBy } from './keep-entry'
import { draftKey, placeKey, type Place } from './place-key'

export type NewReading = {
  place: Place
  factorLevel: string | null
  value: string
  unit: string
  confirmed: boolean
  by: KeptBy
  shown: { code: string; measure: string }
}

/**
 * Keeps a reading on the tablet.
 * @returns false where the tablet holds one for the place already
 * @throws where the tablet cannot keep it
 */
export async function keepReading({ place, factorLevel, value, unit, confirmed, by, shown }: NewReading) {
  const { batchId, measureId, piece, repeat } = place
  const key = placeKey(place)
  return keepEntry({
    kind: 'reading',
    content: {
      batchId,
      measureId,
      piece,
      factorLevel,
      repeat,
      value,
      unit,
      ...(confirmed ? { confirmed } : {}),
    },
    shown: { ...shown, piece, level: factorLevel, repeat, unit },
    by,
    draft: draftKey(by.personId, place),
    isTaken: (entries) =>
      entries.some((each) => each.kind === 'reading' && holds(each) && placeKey(each.payload) === key),
  })
}

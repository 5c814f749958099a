import { v7 as uuid } from 'uuid'
import { readingContentText } from '../../kitchen/readings/reading-content.input'
import type { OutboxEntry } from '../outbox/entry'
import { hashOf } from './hash-of'
import { draftKey, placeKey, type Place } from './place-key'
import { inOne, recall, remember, tablet } from './tablet'

export type NewReading = {
  place: Place
  factorLevel: string | null
  value: string
  unit: string
  confirmed: boolean
  by: { stationId: string; personId: string; personName: string; shiftToken: string }
  shown: { code: string; measure: string }
}

/**
 * Keeps a reading on the tablet, with its draft let go of, in one transaction: when the promise is kept it is on the disk.
 * @returns false where the tablet holds one for the place already
 * @throws where the tablet cannot keep it
 */
export async function keepReading({ place, factorLevel, value, unit, confirmed, by, shown }: NewReading) {
  const { batchId, measureId, piece, repeat } = place
  const payload = {
    id: uuid(),
    batchId,
    measureId,
    piece,
    factorLevel,
    repeat,
    value,
    unit,
    takenAt: new Date().toISOString(),
    ...(confirmed ? { confirmed } : {}),
  }
  const hash = await hashOf(readingContentText(payload))
  return inOne(async () => {
    const key = placeKey(place)
    const there = await tablet.outbox.filter((each) => holds(each) && placeKey(each.payload) === key).count()
    if (there > 0) return false
    const counter = ((await recall('counter')) ?? 0) + 1
    await remember('counter', counter)
    await tablet.outbox.add({
      format: 1,
      id: payload.id,
      kind: 'reading',
      schema: 1,
      payload,
      hash,
      counter,
      ...by,
      state: 'waiting',
      refusal: null,
      words: null,
      settledAt: null,
      shown: { ...shown, piece, level: factorLevel, repeat, unit },
    })
    await tablet.drafts.delete(draftKey(by.personId, place))
    return true
  })
}

/** A reading that the book refused leaves its place free for another one. */
function holds({ state }: OutboxEntry): boolean {
  return state !== 'attention'
}

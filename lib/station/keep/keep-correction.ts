import { holds } from '../outbox/holds'
import type { Standing } from '../outbox/stand-of-place'
import { keepEntry, type KeptBy } from './keep-entry'
import { fixKey, type Place } from './place-key'

export type NewCorrection = {
  place: Place
  level: string | null
  wrong: Standing
  /** What stood there, as it is shown. */
  was: string
  value: string
  unit: string
  reason: string
  confirmed: boolean
  by: KeptBy
  shown: { code: string; measure: string }
}

/**
 * Keeps a correction on the tablet, of a reading in the book or of one that lies here too and goes before it.
 * @returns false where the tablet holds one of the same reading already
 * @throws where the tablet cannot keep it
 */
export async function keepCorrection(q: NewCorrection): Promise<boolean> {
  const { place, level, wrong, was, value, unit, reason, confirmed, by, shown } = q
  const { batchId, measureId, piece, repeat } = place
  return keepEntry({
    kind: 'correction',
    content: { supersedesId: wrong.id, piece, repeat, value, unit, reason, ...(confirmed ? { confirmed } : {}) },
    shown: { ...shown, batchId, measureId, level, was, at: new Date().toISOString() },
    by,
    draft: fixKey(by.personId, place),
    isTaken: (entries) =>
      entries.some((each) => each.kind === 'correction' && holds(each) && each.payload.supersedesId === wrong.id),
  })
}

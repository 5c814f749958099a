import { describe, expect, it } from 'vitest'
import type { EntryOf, EntryState } from '@/lib/station/outbox/entry'
import { causesOfDough, isSaidLost } from '@/lib/station/outbox/causes-of-dough'
import { stationCauses } from '@/lib/words/en/station-causes'

const cause = (batchId: string, what: string, state: EntryState = 'waiting'): EntryOf<'cause'> => ({
  format: 1,
  id: `${batchId} ${what}`,
  schema: 1,
  hash: 'a'.repeat(64),
  counter: 1,
  stationId: 'bench',
  personId: 'esi',
  personName: 'Esi',
  shiftToken: 'token',
  state,
  refusal: null,
  words: null,
  settledAt: null,
  kind: 'cause',
  payload: { id: `${batchId} ${what}`, batchId, what, takenAt: '2026-03-02T10:00:00.000Z' },
  shown: { code: '101' },
})
const { lost, oven } = stationCauses.what

describe('what a tablet noted to have gone wrong with a dough', () => {
  it('is its own alone, in the order in which it was noted', () => {
    const entries = [cause('one', oven), cause('other', oven), cause('one', lost)]
    expect(causesOfDough('one', entries).map(({ payload }) => payload.what)).toEqual([oven, lost])
    expect(causesOfDough('third', entries)).toEqual([])
  })

  it.each([
    ['said to be lost, and not sent yet', [cause('one', lost)], true],
    ['said to be lost, in the book', [cause('one', oven), cause('one', lost, 'book')], true],
    ['said to be something else', [cause('one', oven)], false],
    ['another', [cause('other', lost)], false],
  ])('says whether it is lost: %s', (_, entries, is) => {
    expect(isSaidLost('one', entries)).toBe(is)
  })
})

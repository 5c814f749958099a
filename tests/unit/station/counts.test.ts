import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { countOfDough, readCount } from '@/lib/station/outbox/count-of-dough'
import type { EntryOf } from '@/lib/station/outbox/entry'
import { saidOfCount } from '@/lib/station/ui/said-of-count'

const noon = Date.UTC(2026, 2, 1, 12)
const minute = 60_000
const kept = (at: number, made: number, more: Partial<EntryOf<'count'>> & { clockAheadS?: number } = {}) => {
  const { clockAheadS = 0, id = `${at} ${made}`, ...rest } = more
  const entry: EntryOf<'count'> = {
    format: 1,
    id,
    schema: 1,
    hash: '',
    counter: 1,
    stationId: 's',
    personId: 'esi',
    personName: 'Esi',
    shiftToken: '',
    state: 'waiting',
    refusal: null,
    words: null,
    settledAt: null,
    kind: 'count',
    payload: {
      id,
      batchId: 'dough',
      made,
      good: made,
      clockAheadS,
      takenAt: new Date(noon + at * minute).toISOString(),
    },
    shown: { code: '101' },
    ...rest,
  }
  return entry
}
const inBook = (at: number, made: number, id = 'book') => ({
  id: 'dough',
  count: { id, made, good: made, at: new Date(noon + at * minute).toISOString(), who: 'Lars' },
})
const nowhere = { id: 'dough', count: null }

describe('the count of a dough, on a tablet', () => {
  it.each([
    ['nobody has counted', nowhere, [], null],
    ['the book has it', inBook(0, 12), [], 12],
    ['this tablet has counted', nowhere, [kept(0, 12)], 12],
    ['somebody else counted later', inBook(5, 11), [kept(0, 12)], 11],
    ['this tablet counted later', inBook(0, 11), [kept(5, 12)], 12],
    ['the book refused it', inBook(0, 11), [kept(5, 12, { state: 'attention' })], 11],
    ['it was counted twice here', nowhere, [kept(5, 10), kept(0, 12)], 10],
    ['the clock of this tablet was an hour behind then', inBook(30, 11), [kept(0, 12, { clockAheadS: 3600 })], 12],
  ])('is the latest: %s', (_, dough, entries, made) => {
    expect(countOfDough(dough, entries, 0)?.made ?? null).toBe(made)
  })

  it('is the same in whatever order counts lie there', () => {
    const counts = fc.array(fc.record({ at: fc.integer({ min: 0, max: 5 }), made: fc.nat(20) }), {
      minLength: 1,
      maxLength: 6,
    })
    fc.assert(
      fc.property(counts, (all) => {
        const entries = all.map(({ at, made }, index) => kept(at, made, { id: `id ${index}` }))
        const stands = countOfDough(nowhere, entries, 0)
        expect(countOfDough(nowhere, [...entries].reverse(), 0)).toEqual(stands)
        expect(stands?.at).toBe(noon + Math.max(...all.map(({ at }) => at)) * minute)
      }),
      { seed: 87 },
    )
  })

  it('says what was said, and nothing of what was not', () => {
    const typed = readCount({ made: '12', good: '11', sold: '', given: '0' })
    expect(typed).toEqual({ made: 12, good: 11, sampled: null, sold: null, given: 0, wasted: null })
    expect(saidOfCount({ ...typed, made: 12, good: 11 })).toEqual(['Made: 12', 'Good: 11', 'Given away: 0'])
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { nextPhoto } from '@/lib/station/photo/next-photo'

const people = ['a', 'b', 'c']
const photos = fc.uniqueArray(
  fc.record({
    counter: fc.nat(50),
    tries: fc.nat(3),
    personId: fc.constantFrom(...people),
    state: fc.constantFrom('waiting' as const, 'attention' as const, 'book' as const),
    shiftToken: fc.constant('kept under'),
  }),
  { selector: ({ counter }) => counter },
)
const holders = fc.uniqueArray(
  fc.record({
    personId: fc.constantFrom(...people),
    token: fc.option(fc.constant('newer')),
    asks: fc.constantFrom('nothing' as const, 'tap' as const, 'pin' as const),
  }),
  { selector: ({ personId }) => personId },
)

describe('which photo goes next', () => {
  it('is one that waits, of nobody who has to log on, and no other such was tried less, or as often and is older', () => {
    fc.assert(
      fc.property(photos, holders, (all, there) => {
        const mayGo = all.filter(
          ({ state, personId }) =>
            state === 'waiting' && !there.some((each) => each.personId === personId && each.asks !== 'nothing'),
        )
        const next = nextPhoto(all, there)
        expect(next === null).toBe(mayGo.length === 0)
        if (!next) return
        const { photo, token } = next
        expect(mayGo).toContain(photo)
        for (const other of mayGo)
          expect(other.tries > photo.tries || (other.tries === photo.tries && other.counter >= photo.counter)).toBe(
            true,
          )
        const holder = there.find(({ personId }) => personId === photo.personId)
        expect(token).toBe(holder?.token ?? 'kept under')
      }),
      { seed: 91 },
    )
  })

  it('comes round to each, however often the book leaves one without an answer', () => {
    const all = [1, 2, 3].map((counter) => ({
      counter,
      tries: 0,
      personId: 'a',
      state: 'waiting' as const,
      shiftToken: 't',
    }))
    const tried = [1, 2, 3, 4, 5, 6].map(() => {
      const { photo } = nextPhoto(all, [])!
      photo.tries += 1
      return photo.counter
    })
    expect(tried).toEqual([1, 2, 3, 1, 2, 3])
  })
})

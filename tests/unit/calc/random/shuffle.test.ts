import fc from 'fast-check'
import { expect, test } from 'vitest'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { shuffle } from '@/lib/calc/random/shuffle'
import { forLong } from '@/tests/support/long'

test('a shuffle keeps every member and leaves the list alone', () => {
  fc.assert(
    fc.property(fc.array(fc.integer()), fc.string(), (list, seed) => {
      const before = [...list]
      const after = shuffle(seededRandom(seed), list)
      expect(list).toEqual(before)
      expect([...after].sort((a, b) => a - b)).toEqual([...list].sort((a, b) => a - b))
    }),
    { seed: 1 },
  )
})

test('all orders of three come equally often', () => {
  const random = seededRandom('orders')
  const each = forLong(10_000, 200_000)
  const seen = new Map<string, number>()
  for (let i = 0; i < 6 * each; i++) {
    const order = shuffle(random, ['a', 'b', 'c']).join('')
    seen.set(order, (seen.get(order) ?? 0) + 1)
  }
  expect(seen.size).toBe(6)
  const chiSquared = [...seen.values()].reduce((sum, count) => sum + (count - each) ** 2 / each, 0)
  expect(chiSquared).toBeLessThan(20.52) // upper 0.001 point, 5 df
})

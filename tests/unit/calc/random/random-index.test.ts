import { expect, test } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import { randomIndex } from '@/lib/calc/random/random-index'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'

test('every index comes equally often', () => {
  const random = seededRandom('index')
  const each = forLong(10_000, 200_000)
  const seen = new Array<number>(7).fill(0)
  for (let i = 0; i < 7 * each; i++) seen[randomIndex(random, 7)]! += 1
  const chiSquared = seen.reduce((sum, count) => sum + (count - each) ** 2 / each, 0)
  expect(chiSquared).toBeLessThan(22.46) // upper 0.001 point, 6 df
})

test('draws of the incomplete last cycle are refused', () => {
  const draws = [1 - 2 ** -53, 0.5]
  expect(randomIndex(() => draws.shift() ?? 0, 3)).toBe(2 ** 52 % 3)
})

test('no count, and a generator that is stuck, are errors', () => {
  expect(() => randomIndex(() => 0.5, 0)).toThrow(CalcError)
  expect(() => randomIndex(() => 1 - 2 ** -53, 3)).toThrow('no-convergence')
})

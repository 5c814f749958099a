import { expect, test } from 'vitest'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'

test('deviates have mean 0, variance 1, no skew and normal tails', () => {
  const random = seededRandom('normal')
  const n = forLong(100_000, 2_000_000)
  let [sum, squares, cubes, fourths] = [0, 0, 0, 0]
  for (let i = 0; i < n; i++) {
    const z = normalDeviate(random)
    sum += z
    squares += z * z
    cubes += z ** 3
    fourths += z ** 4
  }
  // four standard errors each: 1/√n, √(2/n), √(15/n), √(96/n)
  expect(Math.abs(sum / n)).toBeLessThan(4 / Math.sqrt(n))
  expect(Math.abs(squares / n - 1)).toBeLessThan(4 * Math.sqrt(2 / n))
  expect(Math.abs(cubes / n)).toBeLessThan(4 * Math.sqrt(15 / n))
  expect(Math.abs(fourths / n - 3)).toBeLessThan(4 * Math.sqrt(96 / n))
})

test('a zero is drawn again, and nothing but zeros is an error', () => {
  const draws = [0, 0.5]
  expect(normalDeviate(() => draws.shift() ?? 0)).toBe(0)
  expect(() => normalDeviate(() => 0)).toThrow('no-convergence')
})

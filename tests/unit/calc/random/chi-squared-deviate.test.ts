import { expect, test } from 'vitest'
import { chiSquaredTail } from '@/lib/calc/distributions/chi-squared-tail'
import { chiSquaredDeviate } from '@/lib/calc/random/chi-squared-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'

// Kolmogorov's distance times √n stays below 1.95 in 999 of 1000 samples; the seed is fixed.
test.each([1, 2, 3, 9, 40, 41])('%i degrees of freedom: the sample follows the distribution', (df) => {
  const random = seededRandom('chi')
  const sample = Array.from({ length: 4000 }, () => chiSquaredDeviate(random, df)).sort((a, b) => a - b)
  const distance = Math.max(
    ...sample.map((x, i) => Math.abs(chiSquaredTail({ x, df, tail: 'lower' }) - (i + 0.5) / sample.length)),
  )
  expect(distance * Math.sqrt(sample.length)).toBeLessThan(1.95)
})

test('the same seed gives the same numbers; none is infinite though the generator gives its ends', () => {
  const draw = () => chiSquaredDeviate(seededRandom('a'), 7)
  expect(draw()).toBe(draw())
  expect(chiSquaredDeviate(() => 0, 50)).toBe(0)
  expect(chiSquaredDeviate(() => 1 - 2 ** -53, 1000)).toBeLessThan(1e6)
})

test.each([0, 1.5, NaN, -2])('%s degrees of freedom are refused', (df) => {
  expect(() => chiSquaredDeviate(() => 0.5, df)).toThrow('"df"')
})

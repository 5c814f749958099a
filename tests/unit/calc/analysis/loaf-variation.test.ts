import { expect, test } from 'vitest'
import { batchMeans } from '@/lib/calc/analysis/batch-means'
import { loafVariation } from '@/lib/calc/analysis/loaf-variation'

const readingsOf = (doughs: readonly (readonly number[])[]) =>
  doughs.flatMap((loaves, d) => loaves.map((value, l) => ({ arm: 'a', batch: String(d), loaf: String(l), value })))

test('pools over doughs, worked out by hand, whatever the doughs’ means', () => {
  // About their means: 1, 0, -1 and 2, -2: a sum of squares of 10 on 3 degrees of freedom.
  const got = loafVariation(
    batchMeans(
      readingsOf([
        [11, 10, 9],
        [52, 48],
      ]),
    ),
    0.95,
  )!
  expect(got.df).toBe(3)
  expect(got.sd).toBeCloseTo(Math.sqrt(10 / 3), 12)
  // Chi-squared with 3 degrees of freedom at 2.5 and 97.5 %: 0.2158 and 9.3484, NIST/SEMATECH e-Handbook, 1.3.6.7.4 (three digits).
  expect(got.low).toBeCloseTo(Math.sqrt(10 / 9.348), 3)
  expect(got.high).toBeCloseTo(Math.sqrt(10 / 0.216), 1)
})

test('nothing without a repeated loaf; a confidence that is none is refused', () => {
  expect(loafVariation(batchMeans(readingsOf([[4], [5]])), 0.95)).toBeNull()
  expect(() => loafVariation(batchMeans(readingsOf([[4, 5]])), 1)).toThrow('out-of-range')
})

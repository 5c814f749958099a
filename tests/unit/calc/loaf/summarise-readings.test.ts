import fc from 'fast-check'
import { expect, test } from 'vitest'
import { summariseReadings } from '@/lib/calc/loaf/summarise-readings'
import { forLong } from '@/tests/support/long'

test('three readings by hand, divisor n − 1', () => {
  const result = summariseReadings([2000, 2010, 2020])
  expect(result).toMatchObject({ n: 3, mean: 2010, sd: 10, range: 20 })
  expect(result.cvPct).toBeCloseTo(1000 / 2010, 12)
})
test('one reading has no spread', () =>
  expect(summariseReadings([5])).toEqual({ n: 1, mean: 5, sd: null, range: 0, cvPct: null }))
test('a large common part does not spoil the spread', () =>
  expect(summariseReadings([1e9 + 1, 1e9 + 2, 1e9 + 3]).sd).toBeCloseTo(1, 6))
test('shifting moves the mean and not the spread', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 5000, noNaN: true }), { minLength: 2, maxLength: 10 }),
      fc.integer({ min: -1000, max: 1000 }),
      (readings, by) => {
        const one = summariseReadings(readings)
        const moved = summariseReadings(readings.map((r) => r + by))
        expect(moved.mean).toBeCloseTo(one.mean + by, 6)
        expect(moved.sd ?? -1).toBeCloseTo(one.sd ?? -2, 6)
      },
    ),
    { seed: 1750, numRuns: forLong(200, 4_000) },
  )
})

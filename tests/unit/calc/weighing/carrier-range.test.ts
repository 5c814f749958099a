import fc from 'fast-check'
import { expect, test } from 'vitest'
import { carrierRangeG } from '@/lib/calc/weighing/carrier-range'

const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true })

test('inside the range the error is small enough, outside it is not', () =>
  fc.assert(
    fc.property(
      positive(1, 100),
      positive(1e-6, 0.1),
      positive(1e-3, 10),
      positive(1e-5, 0.05),
      positive(0.01, 5000),
      (takeG, takeVariance, fixed, leftVariance, carrierG) => {
        const variance = (carrierG ** 2 * takeVariance + fixed) / (takeG + carrierG) ** 2
        fc.pre(Math.abs(variance / leftVariance - 1) > 1e-6)
        const range = carrierRangeG({ takeG, takeVariance, fixed, leftVariance })
        const isInside = range !== null && carrierG >= range.fromG && carrierG <= range.toG
        expect(isInside).toBe(variance < leftVariance)
      },
    ),
    { numRuns: 2_000 },
  ))

test('when nothing of the error is left there is no carrier', () =>
  expect(carrierRangeG({ takeG: 1, takeVariance: 0.1, fixed: 1, leftVariance: 0 })).toBeNull())

test('a take that is just as uncertain as may be leaves a range without an end', () =>
  expect(carrierRangeG({ takeG: 10, takeVariance: 0.01, fixed: 2, leftVariance: 0.01 })).toEqual({
    fromG: expect.closeTo(1 / 0.2, 10),
    toG: Infinity,
  }))

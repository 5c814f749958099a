import { expect, test } from 'vitest'
import { meanInterval } from '@/lib/calc/comparison/mean-interval'
import { expectRefusal } from '@/tests/support/arm-rows'

test('the interval is t standard errors to either side', () => {
  // t of 10 df at 0.975 is 2.228139 in every table
  expect(meanInterval({ estimate: 10, se: 2, df: 10, confidence: 0.95 }).high).toBeCloseTo(10 + 2 * 2.228139, 5)
  expect(meanInterval({ estimate: 10, se: 2, df: 10, confidence: 0.95 }).low).toBeCloseTo(10 - 2 * 2.228139, 5)
})
test('a confidence that is a percentage, or none, is refused', () => {
  for (const confidence of [95, 1, 0.2, NaN]) {
    expect(() => meanInterval({ estimate: 0, se: 1, df: 5, confidence })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field: 'confidence' }) }),
    )
  }
  expectRefusal(() => meanInterval({ estimate: 0, se: -1, df: 5, confidence: 0.95 }), 'out-of-range')
})

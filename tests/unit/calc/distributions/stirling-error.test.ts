import { expect, test } from 'vitest'
import { stirlingError } from '@/lib/calc/distributions/stirling-error'

test('below 15 it goes on where the series begins', () => {
  expect(stirlingError(15 - 1e-9)).toBeCloseTo(stirlingError(15), 10)
})

test('it lies between the first two sums of its alternating series', () => {
  for (const x of [3, 14, 16, 100, 1e6]) {
    expect(stirlingError(x)).toBeLessThan(1 / (12 * x) + 1e-14)
    expect(stirlingError(x)).toBeGreaterThan(1 / (12 * x) - 1 / (360 * x ** 3) - 1e-14)
  }
})

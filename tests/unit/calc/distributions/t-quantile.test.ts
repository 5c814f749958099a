import { expect, test } from 'vitest'
import { tQuantile } from '@/lib/calc/distributions/t-quantile'

test('with two degrees of freedom it has a closed form', () => {
  for (const p of [1e-9, 0.01, 0.3, 0.45]) {
    const exact = (1 - 2 * p) / Math.sqrt(2 * p * (1 - p))
    expect(tQuantile({ p, df: 2, tail: 'upper' }) / exact).toBeCloseTo(1, 11)
  }
})

test('it is symmetrical about 0', () => {
  expect(tQuantile({ p: 0.5, df: 3, tail: 'upper' })).toBe(0)
  expect(tQuantile({ p: 0.025, df: 3, tail: 'lower' })).toBe(-tQuantile({ p: 0.025, df: 3, tail: 'upper' }))
})

import { expect, test } from 'vitest'
import { chiSquaredQuantile } from '@/lib/calc/distributions/chi-squared-quantile'

test('with two degrees of freedom it is a logarithm', () => {
  for (const p of [1e-12, 0.05, 0.9])
    expect(chiSquaredQuantile({ p, df: 2, tail: 'upper' }) / (-2 * Math.log(p))).toBeCloseTo(1, 11)
})

import { expect, test } from 'vitest'
import { chiSquaredTail } from '@/lib/calc/distributions/chi-squared-tail'

test('with two degrees of freedom it is exponential', () => {
  for (const x of [0, 0.5, 10, 700])
    expect(chiSquaredTail({ x, df: 2, tail: 'upper' })).toBeCloseTo(Math.exp(-x / 2), 14)
})

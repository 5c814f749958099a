import { expect, test } from 'vitest'
import { positiveQuantile } from '@/lib/calc/distributions/positive-quantile'

test('finds very small and very large values', () => {
  for (const x of [1e-200, 1e-5, 1, 1e200]) {
    expect(positiveQuantile({ tail: (v) => x / (x + v), p: 0.5, start: 1 }) / x).toBeCloseTo(1, 10)
  }
})

test('a probability that is never reached is an error', () => {
  expect(() => positiveQuantile({ tail: () => 0.2, p: 0.5, start: 1 })).toThrow('no-convergence')
})

import { expect, test } from 'vitest'
import { dunnettLoadings } from '@/lib/calc/distributions/dunnett-loadings'

test('equal sizes give correlation one half', () => {
  const [a, b] = dunnettLoadings({ controlCount: 5, armCounts: [5, 5] })
  expect(a! * b!).toBeCloseTo(0.5, 15)
})

test('an arm without batches is refused', () => {
  expect(() => dunnettLoadings({ controlCount: 5, armCounts: [0] })).toThrow('out-of-range')
})

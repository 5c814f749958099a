import { expect, test } from 'vitest'
import { fQuantile } from '@/lib/calc/distributions/f-quantile'

test('the lower quantile is the reciprocal of the upper one with the degrees of freedom swapped', () => {
  const lower = fQuantile({ p: 0.05, df1: 3, df2: 12, tail: 'lower' })
  expect(lower * fQuantile({ p: 0.05, df1: 12, df2: 3, tail: 'upper' })).toBeCloseTo(1, 11)
})

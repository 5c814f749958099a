import { expect, test } from 'vitest'
import { fTail } from '@/lib/calc/distributions/f-tail'
import { tTail } from '@/lib/calc/distributions/t-tail'

test('the square of t is F with one numerator degree of freedom', () => {
  for (const t of [0.3, 2, 11]) {
    expect(fTail({ f: t * t, df1: 1, df2: 7, tail: 'upper' }) / (2 * tTail({ t, df: 7, tail: 'upper' }))).toBeCloseTo(
      1,
      12,
    )
  }
})

test('the reciprocal swaps the degrees of freedom', () => {
  expect(fTail({ f: 1 / 3, df1: 4, df2: 9, tail: 'lower' })).toBeCloseTo(
    fTail({ f: 3, df1: 9, df2: 4, tail: 'upper' }),
    14,
  )
})

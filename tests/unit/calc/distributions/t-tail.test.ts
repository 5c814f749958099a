import { expect, test } from 'vitest'
import { tTail } from '@/lib/calc/distributions/t-tail'

test('with one degree of freedom it is the Cauchy distribution', () => {
  for (const t of [0.1, 1, 3, 1e6]) {
    expect(tTail({ t, df: 1, tail: 'upper' }) / (Math.atan(1 / t) / Math.PI)).toBeCloseTo(1, 13)
  }
})

test('it is symmetrical, ½ at 0, and survives enormous t', () => {
  expect(tTail({ t: -2, df: 5, tail: 'lower' })).toBe(tTail({ t: 2, df: 5, tail: 'upper' }))
  expect(tTail({ t: 0, df: 5, tail: 'upper' })).toBeCloseTo(0.5, 15)
  expect(tTail({ t: 0, df: 5, tail: 'lower' })).toBeCloseTo(0.5, 15)
  expect(tTail({ t: 1e200, df: 5, tail: 'upper' })).toBe(0)
  expect(tTail({ t: 1e200, df: 5, tail: 'lower' })).toBe(1)
})

import { expect, test } from 'vitest'
import { ownDayInterval } from '@/lib/calc/analysis/own-day-interval'

const q = { confidence: 0.95, size: 2500 }

test('the interval is the mean and t standard errors to each side', () => {
  const found = ownDayInterval({ ...q, differences: [70, 80, 90] })
  expect(found).toMatchObject({ days: 3, mean: 80, df: 2 })
  expect(found.se).toBeCloseTo(10 / Math.sqrt(3), 12)
  // t of 2 df, 0.975: 4.302653, from the closed form p √(2 / (1 − p²)) with p = 0.95
  const t = 0.95 * Math.sqrt(2 / (1 - 0.95 ** 2))
  expect(found.high! - 80).toBeCloseTo((t * 10) / Math.sqrt(3), 9)
  expect(80 - found.low!).toBeCloseTo((t * 10) / Math.sqrt(3), 9)
})

test('one day, and days that all differ by the same, give no limits', () => {
  expect(ownDayInterval({ ...q, differences: [80] })).toEqual({
    days: 1,
    mean: 80,
    se: null,
    df: 0,
    low: null,
    high: null,
  })
  expect(ownDayInterval({ ...q, differences: [80, 80, 80] })).toMatchObject({ low: null, high: null })
})

test('none, and no figure, are refused', () => {
  expect(() => ownDayInterval({ ...q, differences: [] })).toThrow('empty')
  expect(() => ownDayInterval({ ...q, differences: [1, NaN] })).toThrow('not-finite')
  expect(() => ownDayInterval({ ...q, differences: [1, 2], confidence: 1 })).toThrow('out-of-range')
})

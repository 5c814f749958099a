import { expect, test } from 'vitest'
import { risePct } from '@/lib/calc/fermentation/rise-pct'

test('a doubled dough has risen by 100 %, a fallen one by less than nothing', () => {
  expect(risePct({ startHeightMm: 55, heightMm: 110 })).toBe(100)
  expect(risePct({ startHeightMm: 50, heightMm: 45 })).toBeCloseTo(-10, 12)
})

test('an empty jar and no number are refused', () => {
  expect(() => risePct({ startHeightMm: 0, heightMm: 10 })).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'startHeightMm' }) }),
  )
  expect(() => risePct({ startHeightMm: 10, heightMm: Number.NaN })).toThrow(
    expect.objectContaining({ code: 'not-finite' }),
  )
})

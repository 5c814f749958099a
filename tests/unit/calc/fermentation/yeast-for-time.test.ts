import { expect, test } from 'vitest'
import { yeastForTime } from '@/lib/calc/fermentation/yeast-for-time'

test('twice the time takes half of the yeast', () => {
  expect(yeastForTime({ yeastPctFlour: 2, atMin: 60, wantedMin: 120 })).toEqual({ yeastPctFlour: 1, warnings: [] })
})

test('times at which the rule fails are said, whichever of the two is long', () => {
  for (const q of [
    { atMin: 60, wantedMin: 121 },
    { atMin: 60, wantedMin: 29 },
    { atMin: 250, wantedMin: 200 },
    { atMin: 200, wantedMin: 241 },
  ])
    expect(yeastForTime({ yeastPctFlour: 2, ...q }).warnings).toEqual(['long-time'])
})

test('no yeast, and no time, are refused', () => {
  expect(() => yeastForTime({ yeastPctFlour: 0, atMin: 60, wantedMin: 90 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
  expect(() => yeastForTime({ yeastPctFlour: 1, atMin: 60, wantedMin: 0 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'wantedMin' }) }),
  )
})

import { expect, test } from 'vitest'
import { firmnessAt } from '@/lib/calc/staling/firmness-at'
import { halfLifeDays } from '@/lib/calc/staling/half-life'

test('after it half of the way to the end is gone, whatever the limits', () => {
  const days = halfLifeDays({ ratePerDay: 0.27 })
  expect(firmnessAt({ startFirmness: 3, endFirmness: 11, ratePerDay: 0.27, days })).toBeCloseTo(7, 12)
})

test('no rate is refused', () => {
  expect(() => halfLifeDays({ ratePerDay: 0 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  expect(() => halfLifeDays({ ratePerDay: 1e-320 })).toThrow(expect.objectContaining({ code: 'not-finite' }))
})

test('with an exponent too, half of the way to the end is gone', () => {
  const curve = { ratePerDay: 0.21, avramiExponent: 1.3 }
  expect(firmnessAt({ startFirmness: 3, endFirmness: 11, ...curve, days: halfLifeDays(curve) })).toBeCloseTo(7, 12)
})

test('an exponent that no bread has is refused', () => {
  expect(() => halfLifeDays({ ratePerDay: 0.21, avramiExponent: 0 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'avramiExponent' }) }),
  )
})

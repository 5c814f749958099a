import fc from 'fast-check'
import { expect, test } from 'vitest'
import { firmnessAt } from '@/lib/calc/staling/firmness-at'

test('it begins at the start, never falls, and never passes the end', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 40, noNaN: true }),
      fc.double({ min: 0, max: 20, noNaN: true }),
      (days, later) => {
        const q = { startFirmness: 2, endFirmness: 10, ratePerDay: 0.4 }
        const now = firmnessAt({ ...q, days })
        expect(now).toBeGreaterThanOrEqual(2)
        expect(firmnessAt({ ...q, days: days + later })).toBeGreaterThanOrEqual(now)
        expect(firmnessAt({ ...q, days: days + later })).toBeLessThanOrEqual(10)
      },
    ),
  ))

test('an end that is softer than the start, and time before baking, are refused', () => {
  const q = { startFirmness: 2, endFirmness: 10, ratePerDay: 0.4, days: 1 }
  expect(() => firmnessAt({ ...q, endFirmness: 2 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'endFirmness' }) }),
  )
  expect(() => firmnessAt({ ...q, days: -1 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  expect(() => firmnessAt({ ...q, ratePerDay: 0 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
})

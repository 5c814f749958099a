import fc from 'fast-check'
import { expect, test } from 'vitest'
import { firmnessAt } from '@/lib/calc/staling/firmness-at'
import { fitFirmness } from '@/lib/calc/staling/fit-firmness'
import { forLong } from '@/tests/support/long'

const days = [0, 1, 2, 3, 4, 6, 8]

test('firming without scatter gives its own start, end and rate back', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 5, noNaN: true }),
      fc.double({ min: 2, max: 20, noNaN: true }),
      fc.double({ min: 0.08, max: 1.2, noNaN: true }),
      (startFirmness, risen, ratePerDay) => {
        const q = { startFirmness, endFirmness: startFirmness + risen, ratePerDay }
        const readings = days.map((one) => ({ days: one, firmness: firmnessAt({ ...q, days: one }) }))
        const free = fitFirmness({ readings, startFirmness: null })
        const fixed = fitFirmness({ readings, startFirmness })
        for (const fit of [free, fixed]) {
          expect(fit.ratePerDay / ratePerDay).toBeCloseTo(1, 5)
          expect(fit.endFirmness / q.endFirmness).toBeCloseTo(1, 5)
          expect(fit.startFirmness).toBeCloseTo(startFirmness, 5)
        }
        expect(fixed.startStandardError).toBeNull()
      },
    ),
    { numRuns: forLong(60, 600) },
  ))

test('readings that stop early say that the end is a guess', () => {
  const readings = [2, 2.9, 3.75, 4.5].map((firmness, i) => ({ days: i, firmness }))
  expect(fitFirmness({ readings, startFirmness: null }).warnings).toEqual(['end-not-seen'])
})

test.each([
  ['crumb that stays the same', [5, 5, 5, 5, 5]],
  ['crumb that gets softer', [6, 5, 4, 3, 2]],
  ['firming along a straight line', [1, 2, 3, 4, 5]],
])('%s has no end to be found, and is refused', (_what, list) =>
  expect(() =>
    fitFirmness({ readings: list.map((firmness, i) => ({ days: i, firmness })), startFirmness: null }),
  ).toThrow(expect.objectContaining({ code: expect.stringMatching(/not-possible|no-convergence/) })),
)

test('few days, no readings and no numbers are refused, and 10,000 readings are answered', () => {
  const one = (at: number, firmness: number) => ({ days: at, firmness })
  expect(() => fitFirmness({ readings: [], startFirmness: null })).toThrow(expect.objectContaining({ code: 'empty' }))
  expect(() => fitFirmness({ readings: [one(1, 2), one(1, 3), one(2, 4), one(2, 5)], startFirmness: null })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'too-few-times' }) }),
  )
  expect(() => fitFirmness({ readings: [one(0, 2), one(0, 2.2), one(3, 4)], startFirmness: 2 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'too-few-times' }) }),
  )
  expect(() =>
    fitFirmness({ readings: [one(0, 2), one(1, Number.NaN), one(3, 4), one(4, 4)], startFirmness: null }),
  ).toThrow(expect.objectContaining({ code: 'not-finite' }))
  const many = Array.from({ length: 10_000 }, (_, i) =>
    one(i / 1000, 5 - 3 * Math.exp(-i / 4000) + 0.1 * Math.sin(i * i)),
  )
  expect(fitFirmness({ readings: many, startFirmness: null }).endFirmness).toBeCloseTo(5, 1)
})

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { tolerableNegativeErrorG } from '@/lib/calc/net-weight/tolerable-negative-error'

test('a heavier package may be short by no less, and by tenths of a gram', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 15_000, noNaN: true }),
      fc.double({ min: 1, max: 2, noNaN: true }),
      (nominalG, times) => {
        const { errorG } = tolerableNegativeErrorG({ nominalG })
        expect(tolerableNegativeErrorG({ nominalG: Math.min(15_000, nominalG * times) }).errorG).toBeGreaterThanOrEqual(
          errorG,
        )
        expect(errorG * 10).toBeCloseTo(Math.round(errorG * 10), 9)
      },
    ),
  ))

test('a percentage is rounded up, and one that is a whole tenth stays it', () => {
  expect(tolerableNegativeErrorG({ nominalG: 453 }).errorG).toBe(13.6)
  expect(tolerableNegativeErrorG({ nominalG: 350 }).errorG).toBe(10.5)
  expect(tolerableNegativeErrorG({ nominalG: 1001 }).errorG).toBe(15.1)
})

test('what the table does not cover is refused', () => {
  for (const nominalG of [4.9, 15_001, Number.NaN]) {
    expect(() => tolerableNegativeErrorG({ nominalG })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field: 'nominalG' }) }),
    )
  }
})

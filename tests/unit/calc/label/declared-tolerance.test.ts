import fc from 'fast-check'
import { expect, test } from 'vitest'
import { declaredTolerance, TOLERANCE_NUTRIENTS } from '@/lib/calc/label/declared-tolerance'

const grams = fc.double({ min: 0, max: 100, noNaN: true })

test('grams for a little, a fifth in between, grams again for much, and nothing below nought', () => {
  expect(declaredTolerance({ nutrient: 'protein', declaredG: 8, measuredG: 6 })).toEqual({
    leastG: 6,
    mostG: 10,
    isWithin: true,
  })
  expect(declaredTolerance({ nutrient: 'carbohydrate', declaredG: 20, measuredG: 24.1 })).toEqual({
    leastG: 16,
    mostG: 24,
    isWithin: false,
  })
  expect(declaredTolerance({ nutrient: 'carbohydrate', declaredG: 45, measuredG: 37 })).toEqual({
    leastG: 37,
    mostG: 53,
    isWithin: true,
  })
  expect(declaredTolerance({ nutrient: 'fibre', declaredG: 1, measuredG: 0 })).toMatchObject({
    leastG: 0,
    isWithin: true,
  })
})

test('what is declared is always within, and more declared never lowers a bound', () =>
  fc.assert(
    fc.property(fc.constantFrom(...TOLERANCE_NUTRIENTS), grams, grams, (nutrient, a, b) => {
      expect(declaredTolerance({ nutrient, declaredG: a, measuredG: a }).isWithin).toBe(true)
      const [low, high] = [Math.min(a, b), Math.max(a, b)].map((declaredG) =>
        declaredTolerance({ nutrient, declaredG, measuredG: 0 }),
      )
      expect(high!.mostG).toBeGreaterThanOrEqual(low!.mostG - 1e-9)
    }),
  ))

test('more than all of it, and no number, are refused by their field', () => {
  for (const field of ['declaredG', 'measuredG'] as const) {
    for (const value of [-0.1, 100.1, Number.NaN]) {
      expect(() => declaredTolerance({ nutrient: 'fat', declaredG: 3, measuredG: 3, [field]: value })).toThrow(
        expect.objectContaining({ facts: expect.objectContaining({ field }) }),
      )
    }
  }
})

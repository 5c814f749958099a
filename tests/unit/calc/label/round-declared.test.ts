import fc from 'fast-check'
import { expect, test } from 'vitest'
import { DECLARED_NUTRIENTS, roundDeclared } from '@/lib/calc/label/round-declared'

test('a rounded figure is never further off than half its step, and never moves the wrong way', () =>
  fc.assert(
    fc.property(
      fc.constantFrom(...DECLARED_NUTRIENTS),
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 10, noNaN: true }),
      (nutrient, value, more) => {
        const { roundedValue } = roundDeclared({ nutrient, value })
        expect(Math.abs(roundedValue - value)).toBeLessThanOrEqual(0.5 + 1e-9)
        expect(roundDeclared({ nutrient, value: value + more }).roundedValue).toBeGreaterThanOrEqual(roundedValue)
      },
    ),
  ))

test('a half goes up, and a figure free of dust stays itself', () => {
  expect(roundDeclared({ nutrient: 'fat', value: 1.25 }).roundedValue).toBe(1.3)
  expect(roundDeclared({ nutrient: 'salt', value: 0.3 }).roundedValue).toBe(0.3)
  expect(roundDeclared({ nutrient: 'protein', value: 9.96 }).roundedValue).toBe(10)
})

test('less than none and no number are refused', () => {
  expect(() => roundDeclared({ nutrient: 'fat', value: -0.1 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
  expect(() => roundDeclared({ nutrient: 'fat', value: Number.NaN })).toThrow(
    expect.objectContaining({ code: 'not-finite' }),
  )
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { massFromUnit, massInUnit, type MassUnit } from '@/lib/words/format/mass'
import { massText } from '@/lib/words/format/mass-text'
import { forLong } from '@/tests/support/long'

// NIST Handbook 44, Appendix C, units of mass: 1 avoirdupois ounce is 28.349 523 125 g, 1 pound is 453.592 37 g
// and 16 ounces, all exact.
describe('masses in ounces and pounds', () => {
  it('are those of the handbook', () => {
    expect(massFromUnit(1, 'oz')).toBe(28.349523125)
    expect(massFromUnit(1, 'lb')).toBe(453.59237)
    expect(massInUnit(453.59237, 'oz')).toBe(16)
  })
  it('take a sack of 50 lb as 22.679 6185 kg', () => expect(massFromUnit(50, 'lb')).toBeCloseTo(22679.6185, 9))
})

it('kilograms become grams without a stray last digit', () => {
  expect(massFromUnit(1.005, 'kg')).toBe(1005)
  expect(massFromUnit(4.35, 'kg')).toBe(4350)
  expect(massFromUnit(1e-7, 'kg')).toBe(1e-4)
})

it('what is typed in a unit is what is shown in it again', () => {
  fc.assert(
    fc.property(
      fc.constantFrom<MassUnit>('g', 'kg', 'oz', 'lb'),
      fc.integer({ min: 1, max: 99_999_999 }),
      (unit, thousandths) => {
        const typed = thousandths / 1000
        expect(Number(massInUnit(massFromUnit(typed, unit), unit).toPrecision(12))).toBe(typed)
      },
    ),
    { seed: 2907, numRuns: forLong(300, 6_000) },
  )
})

it('a mass is written with the digits it has, and its unit', () => {
  expect(massText(25_000, 'kg', 'en-GB')).toBe('25\u00a0kg')
  expect(massText(0.1, 'g', 'en-GB')).toBe('0.1\u00a0g')
  expect(massText(22679.6185, 'lb', 'en-US')).toBe('50\u00a0lb')
})

it('what is no mass is refused', () => {
  expect(() => massFromUnit(Number.NaN, 'kg')).toThrow(RangeError)
  expect(() => massInUnit(Number.POSITIVE_INFINITY, 'g')).toThrow(RangeError)
})

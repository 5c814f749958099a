import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { massFigure, temperatureFigure, type FieldFigure } from '@/lib/words/format/figure-in-field'
import { typedNumber } from '@/lib/words/format/typed-number'

const locales = ['en-GB', 'en-US', 'en-DE', 'en-SE', 'en-ZA']
const back = (figure: FieldFigure, kept: number, locale: string) => {
  const typed = typedNumber(figure.write(kept, locale), locale)
  return typeof typed === 'number' ? figure.read(typed) : typed
}

describe('a quantity in a field of the bakery’s own units', () => {
  it('stands as it was typed', () => {
    for (const typed of [32, 0.5, 77.25, 2.2])
      expect(massFigure('ounces').write(massFigure('ounces').read(typed), 'en-US')).toBe(String(typed))
    for (const typed of [78, 76.5, 450, 212])
      expect(temperatureFigure('fahrenheit').write(temperatureFigure('fahrenheit').read(typed), 'en-US')).toBe(
        String(typed),
      )
    expect(massFigure('metric').write(912.5, 'en-DE')).toBe('912,5')
  })

  it('has the unit that is typed, and is kept in grams and °C', () => {
    expect([
      massFigure('metric').unit,
      massFigure('ounces').unit,
      temperatureFigure('celsius').unit,
      temperatureFigure('fahrenheit').unit,
    ]).toEqual(['g', 'oz', '°C', '°F'])
    // NIST Handbook 44, Appendix C, to 1 mg; 77 °F are 25 °C.
    expect(massFigure('ounces').read(16)).toBe(453.592)
    expect(temperatureFigure('fahrenheit').read(77)).toBe(25)
  })

  it('that was not touched is read back as the very same, in every locale and unit', () => {
    const massG = fc.integer({ min: 1, max: 50_000_000 }).map((milligrams) => milligrams / 1000)
    const tempC = fc.integer({ min: -40_000, max: 400_000 }).map((thousandths) => thousandths / 1000)
    fc.assert(
      fc.property(massG, tempC, fc.constantFrom(...locales), (mass, temp, locale) => {
        for (const units of ['metric', 'ounces'] as const) expect(back(massFigure(units), mass, locale)).toBe(mass)
        for (const units of ['celsius', 'fahrenheit'] as const)
          expect(back(temperatureFigure(units), temp, locale)).toBe(temp)
      }),
    )
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gramsPerUnit } from '@/lib/words/format/mass'
import { poundsAndOunces } from '@/lib/words/format/pounds-and-ounces'

const us = (massG: number, digits = 0, signed = false) =>
  poundsAndOunces(massG, { locale: 'en-US', digits, signed }).replaceAll('\u00a0', ' ')

describe('pounds and ounces', () => {
  // NIST Handbook 44, Appendix C: 1 lb = 16 oz = 453.59237 g.
  it.each([
    [77 * 28.349523125, 0, '4 lb 13 oz'],
    [453.59237, 0, '1 lb 0 oz'],
    [453.59236, 2, '1 lb 0.00 oz'],
    [450, 0, '1 lb 0 oz'],
    [450, 1, '15.9 oz'],
    [28.349523125, 3, '1.000 oz'],
    [0, 0, '0 oz'],
    [-907.18474, 1, '\u22122 lb 0.0 oz'],
    [500_000, 1, '1,102 lb 5.0 oz'],
  ])('%d g with %d digits is %s', (massG, digits, text) => expect(us(massG, digits)).toBe(text))

  it('puts a plus before a difference, once', () => {
    expect(us(500, 1, true)).toBe('+1 lb 1.6 oz')
    expect(us(10, 2, true)).toBe('+0.35 oz')
  })

  it('never stands with 16 oz or more beside pounds, and adds up to the mass within half its last digit', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), fc.integer({ min: 0, max: 4 }), (massG, digits) => {
        const [ounces = '', pounds = '0'] = us(massG, digits)
          .replaceAll(',', '')
          .replace(' oz', '')
          .split(' lb ')
          .reverse()
        expect(Number(ounces)).toBeLessThan(16)
        const inAll = Number(pounds) * gramsPerUnit.lb + Number(ounces) * gramsPerUnit.oz
        expect(Math.abs(inAll - massG)).toBeLessThanOrEqual((0.5 * gramsPerUnit.oz) / 10 ** digits + 1e-6)
      }),
    )
  })
})

import { describe, expect, it } from 'vitest'
import { formatMoneyMinor } from '@/lib/words/format/money'

/* Minor units by ISO 4217: EUR, GBP, USD 2; JPY 0; KWD 3. Marks by Unicode CLDR. */
describe('formatMoneyMinor', () => {
  it.each([
    [123450, 'de-DE', 'EUR', '1.234,50\u00a0€'],
    [123450, 'en-GB', 'GBP', '£1,234.50'],
    [-5, 'en-US', 'USD', '\u2212$0.05'],
    [1234, 'en-US', 'JPY', '¥1,234'],
    [1234, 'en-US', 'KWD', 'KWD\u00a01.234'],
    [0, 'en-GB', 'GBP', '£0.00'],
    // The same marks as other numbers, whatever the locale's data say of money.
    [123_456_789, 'en-DE', 'EUR', '€1.234.567,89'],
    [123_450, 'en-SE', 'EUR', '€1\u00a0234,50'],
    [-0, 'en-GB', 'GBP', '£0.00'],
  ])('%d in %s %s', (minor, locale, currency, expected) => {
    expect(formatMoneyMinor(minor, { locale, currency })).toBe(expected)
  })

  it('is exact to the last unit of the largest amount', () => {
    expect(formatMoneyMinor(Number.MAX_SAFE_INTEGER, { locale: 'en-GB', currency: 'GBP' })).toBe('£90,071,992,547,409.91')
  })

  it.each([1.5, NaN, Infinity, 2 ** 53])('refuses %s', (minor) => {
    expect(() => formatMoneyMinor(minor, { locale: 'en-GB', currency: 'GBP' })).toThrow(RangeError)
  })
})

import { expect, it } from 'vitest'
import { formatMoneyAmount } from '@/lib/words/format/money-amount'

it('an amount has the digits of its currency at least, and more only where asked', () => {
  expect(formatMoneyAmount('17.5', { locale: 'en-GB', currency: 'EUR' })).toBe('€17.50')
  expect(formatMoneyAmount('0.8125', { locale: 'en-GB', currency: 'EUR' })).toBe('€0.81')
  expect(formatMoneyAmount('0.8125', { locale: 'en-GB', currency: 'EUR', mostDigits: 4 })).toBe('€0.8125')
  expect(formatMoneyAmount('0', { locale: 'en-GB', currency: 'GBP', mostDigits: 4 })).toBe('£0.00')
})

/* Digits by ISO 4217: EUR, GBP, USD 2; JPY 0; KWD 3. Marks by Unicode CLDR. */
it.each([
  ['1234.5', 'de-DE', 'EUR', '1.234,50\u00a0€'],
  ['1234.5', 'en-GB', 'GBP', '£1,234.50'],
  ['-0.05', 'en-US', 'USD', '\u2212$0.05'],
  ['1234', 'en-US', 'JPY', '¥1,234'],
  ['1.234', 'en-US', 'KWD', 'KWD\u00a01.234'],
  // The same marks as other numbers, whatever the locale's data say of money.
  ['1234567.89', 'en-DE', 'EUR', '€1.234.567,89'],
  ['1234.5', 'en-SE', 'EUR', '€1\u00a0234,50'],
])('%s in %s %s', (amount, locale, currency, expected) => {
  expect(formatMoneyAmount(amount, { locale, currency })).toBe(expected)
})

it('amounts that stand below each other have the same digits', () =>
  expect(
    ['0.45', '0.4591'].map((amount) =>
      formatMoneyAmount(amount, { locale: 'en-GB', currency: 'EUR', leastDigits: 3, mostDigits: 3 }),
    ),
  ).toEqual(['€0.450', '€0.459']))

it('digits that a floating-point number cannot hold are kept', () =>
  expect(formatMoneyAmount('9007199254740993.01', { locale: 'en-GB', currency: 'EUR' })).toBe(
    '€9,007,199,254,740,993.01',
  ))

it('what is no decimal number is refused', () =>
  expect(() => formatMoneyAmount('1e3', { locale: 'en-GB', currency: 'EUR' })).toThrow(RangeError))

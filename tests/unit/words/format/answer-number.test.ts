import { expect, test } from 'vitest'
import { answerNumber } from '@/lib/words/format/answer-number'

test.each([
  [0, '0'],
  [-0, '0'],
  [8.16496580927726, '8.16497'],
  [-8.5, '−8.5'],
  [1234567, '1,234,567'],
  [1234567.891, '1,234,570'],
  [0.0001234567, '0.000123457'],
  [1.5e-30, '1.5 × 10⁻³⁰'],
  [-2.25e-7, '−2.25 × 10⁻⁷'],
  [6.02214076e23, '6.02214 × 10²³'],
  [0.99999999, '0.99999999'],
  [3.00000001, '3.00000001'],
])('%d reads %s', (value, text) => {
  expect(answerNumber(value, { locale: 'en-GB' }).replaceAll('\u00a0', ' ')).toBe(text)
})

test.each([
  [19.2594, { decimals: 1 }, '19.3'],
  [-0.04567, { decimals: 1 }, '−0.046'],
  [99.96, { decimals: 1 }, '100'],
  [1234.567, { decimals: 1 }, '1,234.6'],
  [18, { decimals: 1 }, '18'],
  [243.7234, { significant: 4 }, '243.7'],
  [123456.7, { significant: 4 }, '123,457'],
  [0.00123456, { significant: 4 }, '0.001235'],
])('%d as exact as its unit asks, %j, reads %s', (value, form, text) => {
  expect(answerNumber(value, { locale: 'en-GB', ...form })).toBe(text)
})

test('in the reader’s own marks', () => {
  expect(answerNumber(1234.5, { locale: 'de-DE' })).toBe('1.234,5')
})

test('what is not finite has no text', () => {
  for (const value of [Number.NaN, Infinity, -Infinity])
    expect(() => answerNumber(value, { locale: 'en-GB' })).toThrow(RangeError)
})

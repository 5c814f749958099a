import { expect, it } from 'vitest'
import { plainNumber } from '@/lib/words/format/plain-number'

it('a number is written with the digits it has, six unless told', () => {
  expect(plainNumber(0.5, { locale: 'en-GB' })).toBe('0.5')
  expect(plainNumber(0.0001, { locale: 'en-GB' })).toBe('0.0001')
  expect(plainNumber(96.895, { locale: 'en-GB' })).toBe('96.895')
  expect(plainNumber(1 / 3, { locale: 'en-GB', significant: 3 })).toBe('0.333')
})

it('inside a field thousands are not set apart', () => {
  expect(plainNumber(12_500, { locale: 'en-GB' })).toBe('12,500')
  expect(plainNumber(12_500, { locale: 'en-GB', grouped: false })).toBe('12500')
})

it('below zero it has a real minus', () => expect(plainNumber(-2, { locale: 'en-GB' })).toBe('\u22122'))

it('what is no number is refused', () => expect(() => plainNumber(Number.NaN, { locale: 'en-GB' })).toThrow(RangeError))

import { expect, it } from 'vitest'
import { formatLoafMoney } from '@/lib/words/format/loaf-money'

it('a loaf’s money has three digits after the mark, whatever was worked out', () => {
  expect(formatLoafMoney('0.0536', { locale: 'en-GB', currency: 'EUR' })).toBe('€0.054')
  expect(formatLoafMoney('-0.5', { locale: 'en-GB', currency: 'EUR' })).toBe('−€0.500')
  expect(() => formatLoafMoney('much', { locale: 'en-GB', currency: 'EUR' })).toThrow(RangeError)
})

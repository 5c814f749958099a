import { describe, expect, it } from 'vitest'
import { formatNumber } from '@/lib/words/format/number'
/* Separators by Unicode CLDR: en 1,234.5; de 1.234,5; fr with U+202F and sv with U+00A0 between thousands. */

describe('formatNumber', () => {
  it.each([
    ['en-GB', '−1,234.5'],
    ['de-DE', '−1.234,5'],
    ['fr-FR', '−1\u202f234,5'],
    ['sv-SE', '−1\u00a0234,5'],
  ])('writes %s with its own marks and a minus U+2212', (locale, expected) => {
    expect(formatNumber(-1234.5, { locale, digits: 1 })).toBe(expected)
  })

  it('keeps every digit that was asked for, zeros too', () => {
    expect(formatNumber(4.1, { locale: 'en-GB', digits: 2 })).toBe('4.10')
    expect(formatNumber(12, { locale: 'en-GB', digits: 0 })).toBe('12')
  })

  it('shows no sign before a zero, also one that was rounded', () => {
    expect(formatNumber(-0.04, { locale: 'en-GB', digits: 1 })).toBe('0.0')
    expect(formatNumber(0.04, { locale: 'en-GB', digits: 1, signed: true })).toBe('0.0')
  })

  it('signs a difference on both sides', () => {
    expect(formatNumber(8.9, { locale: 'en-GB', digits: 1, signed: true })).toBe('+8.9')
    expect(formatNumber(-8.9, { locale: 'en-GB', digits: 1, signed: true })).toBe('−8.9')
  })

  it.each([NaN, Infinity, -Infinity])('refuses %s', (value) => {
    expect(() => formatNumber(value, { locale: 'en-GB', digits: 1 })).toThrow(RangeError)
  })
})

import { expect, it } from 'vitest'
import { typedNumber } from '@/lib/words/format/typed-number'

it('reads a number with the locale’s decimal mark', () => {
  expect([' 60.5 ', '.3', '0', '-2', '\u22122'].map((text) => typedNumber(text, 'en-GB'))).toEqual([
    60.5, 0.3, 0, -2, -2,
  ])
  expect(['en-DE', 'en-SE', 'en-ZA'].map((locale) => typedNumber('60,5', locale))).toEqual([60.5, 60.5, 60.5])
})

it('says nothing for nothing, and gives back what is no number, a mark for thousands too', () => {
  expect(typedNumber('  ', 'en-GB')).toBeUndefined()
  for (const text of ['60,5', '1,234', '1.2.3', 'two', '1e3', '.', '12.', '-', '0x10', '1 000', 'Infinity'])
    expect(typedNumber(text, 'en-GB')).toBe(text)
  for (const text of ['1.234', '60.5', '1 234']) expect(typedNumber(text, 'en-DE')).toBe(text)
})

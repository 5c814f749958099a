import { expect, it } from 'vitest'
import { numberFromText } from '@/app/(desk)/formulas/number-from-text'

it('reads a number with the locale’s decimal mark', () => {
  expect([' 60.5 ', '.3', '12.', '0', '-2', '\u22122'].map((text) => numberFromText(text, 'en-GB'))).toEqual([60.5, 0.3, 12, 0, -2, -2])
  expect(numberFromText('60,5', 'de-DE')).toBe(60.5)
})

it('says nothing for nothing, and gives back what is no number, a mark for thousands too', () => {
  expect(numberFromText('  ', 'en-GB')).toBeUndefined()
  for (const text of ['60,5', '1,234', '1.2.3', 'two', '1e3', '.', '-', '0x10', '1 000', 'Infinity']) expect(numberFromText(text, 'en-GB')).toBe(text)
})

import { expect, test } from 'vitest'
import { minorDigits } from '../../../../lib/words/format/minor-digits'

// ISO 4217: 2, 0 and 3 minor digits
test.each([
  ['EUR', 2],
  ['JPY', 0],
  ['KWD', 3],
])('%s has %i digits behind the mark', (currency, digits) => {
  expect(minorDigits(currency)).toBe(digits)
})

test('what is no code is refused', () => {
  expect(() => minorDigits('euro')).toThrow(RangeError)
})

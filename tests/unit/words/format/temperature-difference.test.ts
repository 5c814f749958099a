import { expect, it } from 'vitest'
import { differenceFromUnit, differenceInUnit } from '@/lib/words/format/temperature-difference'

// NIST Special Publication 811 (2008), B.8: an interval of 1 °F is 5/9 of 1 °C.
it('an interval of 9 °F is one of 5 °C, without the 32 of a reading', () => {
  expect(differenceFromUnit(9, 'fahrenheit')).toBe(5)
  expect(differenceInUnit(5, 'fahrenheit')).toBe(9)
  expect(differenceFromUnit(0.1, 'celsius')).toBe(0.1)
  expect(differenceInUnit(0.1, 'celsius')).toBe(0.1)
})

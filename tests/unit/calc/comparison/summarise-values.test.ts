import fc from 'fast-check'
import { expect, test } from 'vitest'
import { summariseValues } from '@/lib/calc/comparison/summarise-values'
import { expectRefusal, reading } from '@/tests/support/arm-rows'

test('a large common part costs no digits', () => {
  const { mean, sumSquares } = summariseValues('values', [1e9 + 1, 1e9 + 2, 1e9 + 3])
  expect(mean).toBe(1e9 + 2)
  expect(sumSquares).toBe(2)
})
test('the mean lies among the values, and the sum of squares is that about the mean', () => {
  fc.assert(
    fc.property(fc.array(reading, { minLength: 1, maxLength: 20 }), (values) => {
      const { mean, sumSquares } = summariseValues('values', values)
      expect(mean).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9)
      expect(mean).toBeLessThanOrEqual(Math.max(...values) + 1e-9)
      const byPairs =
        values.reduce((sum, a) => sum + values.reduce((inner, b) => inner + (a - b) ** 2, 0), 0) / (2 * values.length)
      expect(sumSquares).toBeCloseTo(byPairs, 4)
    }),
  )
})
test('nothing, and what is no number, is refused', () => {
  expectRefusal(() => summariseValues('values', []), 'empty')
  expectRefusal(() => summariseValues('values', [1, NaN]), 'not-finite')
  expectRefusal(() => summariseValues('values', [1e200]), 'out-of-range')
})

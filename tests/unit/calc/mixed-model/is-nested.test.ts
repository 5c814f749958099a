import { expect, test } from 'vitest'
import { isNested } from '@/lib/calc/mixed-model/is-nested'

test('each level must lie in one level of the other', () => {
  expect(isNested(['1', '1', '2', '3'], ['Monday', 'Monday', 'Monday', 'Friday'])).toBe(true)
  expect(isNested(['1', '2', '1'], ['Monday', 'Monday', 'Friday'])).toBe(false)
  expect(isNested(['a', 'b'], ['a', 'b'])).toBe(true)
  expect(isNested([], [])).toBe(true)
})

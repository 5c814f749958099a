import { expect, test } from 'vitest'
import { mustBePlansSample } from '@/lib/calc/net-weight/must-be-plans-sample'

test('the plan’s number passes, one more or fewer is refused with the number wanted', () => {
  expect(() => mustBePlansSample([1, 2, 3], 3)).not.toThrow()
  for (const packages of [0, 2, 4])
    expect(() => mustBePlansSample([1, 2, 3], packages)).toThrow(
      expect.objectContaining({
        facts: { field: 'contentsG', value: 3, min: packages, max: packages, reason: 'not-the-plans-sample' },
      }),
    )
})

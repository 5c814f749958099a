import { expect, test } from 'vitest'
import { studentizedRangeTail } from '@/lib/calc/distributions/studentized-range-tail'
import { tTail } from '@/lib/calc/distributions/t-tail'

test('the range of two means is a t test in disguise', () => {
  for (const df of [1, 6, 200]) {
    for (const range of [0.5, 3, 12]) {
      const t = 2 * tTail({ t: range / Math.SQRT2, df, tail: 'upper' })
      expect(studentizedRangeTail({ range, groups: 2, df }).upper / t).toBeCloseTo(1, 9)
    }
  }
})

test('the sides add up to one, and more means range farther', () => {
  const [few, many] = [3, 8].map((groups) => studentizedRangeTail({ range: 4, groups, df: 12 }))
  expect(few!.lower + few!.upper).toBeCloseTo(1, 11)
  expect(many!.lower + many!.upper).toBeCloseTo(1, 11)
  expect(many!.upper).toBeGreaterThan(few!.upper)
})

import { expect, test } from 'vitest'
import { studentizedRangeQuantile } from '@/lib/calc/distributions/studentized-range-quantile'
import { studentizedRangeTail } from '@/lib/calc/distributions/studentized-range-tail'

test('the quantile undoes the tail', () => {
  for (const p of [0.5, 0.05, 0.001]) {
    const range = studentizedRangeQuantile({ p, groups: 5, df: 9 })
    expect(studentizedRangeTail({ range, groups: 5, df: 9 }).upper / p).toBeCloseTo(1, 9)
  }
})

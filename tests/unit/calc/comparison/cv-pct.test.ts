import { expect, test } from 'vitest'
import { cvPct } from '@/lib/calc/comparison/cv-pct'

test('the spread is said in % of a mean above zero', () => {
  expect(cvPct(5, 200)).toBe(2.5)
  expect(cvPct(0, 5e-324)).toBe(0)
})
test('of no mean, a negative one or one that is next to nothing it is left out', () => {
  expect([cvPct(5, 0), cvPct(5, -2), cvPct(5, 5e-324), cvPct(0, 0)]).toEqual([null, null, null, null])
})

import { expect, test } from 'vitest'
import { anovaPower } from '@/lib/calc/plan/anova-power'
import { anovaSize } from '@/lib/calc/plan/anova-size'

const q = { power: 0.8, means: [10, 12, 12], sd: 3, alpha: 0.05 } as const

test('the number reaches the power, one fewer does not', () => {
  const got = anovaSize(q)
  expect(got.power).toBe(anovaPower({ ...q, countPerArm: got.count }).power)
  expect(got.power).toBeGreaterThanOrEqual(0.8)
  expect(got.powerOneFewer).toBeLessThan(0.8)
})

test('means that are all the same, and a power of one, are refused', () => {
  expect(() => anovaSize({ ...q, means: [5, 5, 5] })).toThrow('"means"')
  expect(() => anovaSize({ ...q, power: 1 })).toThrow('"power"')
})

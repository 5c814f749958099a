import { expect, test } from 'vitest'
import { twoArmsPower } from '@/lib/calc/plan/two-arms-power'

const q = { countPerArm: 8, difference: 5, sd: 4, alpha: 0.05, alternative: 'two-sided' } as const

test('more doughs, a larger difference and a smaller spread help', () => {
  const { power, df, noncentrality } = twoArmsPower(q)
  expect({ df, noncentrality }).toEqual({ df: 14, noncentrality: 2.5 })
  expect(twoArmsPower({ ...q, countPerArm: 9 }).power).toBeGreaterThan(power)
  expect(twoArmsPower({ ...q, difference: -6 }).power).toBeGreaterThan(power)
  expect(twoArmsPower({ ...q, sd: 3 }).power).toBeGreaterThan(power)
  expect(twoArmsPower({ ...q, countPerArm: 10_000, difference: 1, sd: 4 }).power).toBeCloseTo(1, 10)
})

test.each([
  ['countPerArm', { countPerArm: 1 }, 'out-of-range'],
  ['countPerArm', { countPerArm: 2.5 }, 'not-whole'],
  ['countPerArm', { countPerArm: 10_001 }, 'out-of-range'],
  ['sd', { sd: 0 }, 'out-of-range'],
  ['sd', { sd: -1 }, 'out-of-range'],
  ['sd', { sd: Infinity }, 'not-finite'],
])('bad input is refused at its field: %s %j', (field, change, code) => {
  expect(() => twoArmsPower({ ...q, ...change })).toThrow(code)
  expect(() => twoArmsPower({ ...q, ...change })).toThrow(`"${field}"`)
})

import { expect, test } from 'vitest'
import { anovaPower } from '@/lib/calc/plan/anova-power'
import { twoArmsPower } from '@/lib/calc/plan/two-arms-power'

const q = { countPerArm: 5, means: [10, 12, 14], sd: 3, alpha: 0.05 } as const

test('of two arms it is the two-sided t test', () => {
  const f = anovaPower({ ...q, means: [10, 14] })
  expect(f.power).toBeCloseTo(
    twoArmsPower({ countPerArm: 5, difference: 4, sd: 3, alpha: 0.05, alternative: 'two-sided' }).power,
    10,
  )
  expect(f).toMatchObject({ df1: 1, df2: 8 })
})

test('equal means give the chance of a false alarm, and only differences count', () => {
  expect(anovaPower({ ...q, means: [7, 7, 7] }).power).toBeCloseTo(0.05, 12)
  expect(anovaPower({ ...q, means: [1010, 1012, 1014] }).power).toBeCloseTo(anovaPower(q).power, 10)
})

test.each([
  ['countPerArm', { countPerArm: 1 }, 'out-of-range'],
  ['means', { means: [1] }, 'empty'],
  ['means[1]', { means: [1, NaN] }, 'not-finite'],
  ['means', { means: [0, 1e9] }, 'far-beyond-spread'],
  ['means.length', { means: Array.from({ length: 10_000 }, (_, i) => i) }, 'out-of-range'],
  ['sd', { sd: 0 }, 'out-of-range'],
  ['alpha', { alpha: 1 }, 'out-of-range'],
])('bad input is refused at its field: %s', (field, change, code) => {
  expect(() => anovaPower({ ...q, ...change })).toThrow(code)
  expect(() => anovaPower({ ...q, ...change })).toThrow(`"${field}"`)
})

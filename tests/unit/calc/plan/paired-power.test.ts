import { expect, test } from 'vitest'
import { pairedPower } from '@/lib/calc/plan/paired-power'
import { twoArmsPower } from '@/lib/calc/plan/two-arms-power'

const q = { pairs: 10, difference: 40, sdOfDifferences: 40, alpha: 0.05, alternative: 'two-sided' } as const

test('days that do not matter cost degrees of freedom and nothing else', () => {
  const paired = pairedPower({ ...q, sdOfDifferences: 30 * Math.SQRT2 })
  const apart = twoArmsPower({ ...q, countPerArm: 10, sd: 30 })
  expect(paired.noncentrality).toBeCloseTo(apart.noncentrality, 12)
  expect(paired.df).toBe(9)
  expect(paired.power).toBeLessThan(apart.power)
})

test.each([
  ['pairs', { pairs: 1 }, 'out-of-range'],
  ['pairs', { pairs: NaN }, 'not-finite'],
  ['sdOfDifferences', { sdOfDifferences: 0 }, 'out-of-range'],
])('bad input is refused at its field: %s %j', (field, change, code) => {
  expect(() => pairedPower({ ...q, ...change })).toThrow(code)
  expect(() => pairedPower({ ...q, ...change })).toThrow(`"${field}"`)
})

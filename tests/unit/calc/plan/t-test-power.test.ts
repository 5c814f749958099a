import { expect, test } from 'vitest'
import { mustBeSeeable, tTestPower } from '@/lib/calc/plan/t-test-power'

const q = { difference: 0, differenceSe: 2, df: 9, alpha: 0.05, alternative: 'two-sided' } as const

test('without a difference the power is the chance of a false alarm', () => {
  for (const alternative of ['two-sided', 'greater', 'less'] as const) {
    expect(tTestPower({ ...q, alternative }).power).toBeCloseTo(0.05, 12)
  }
})

test('less mirrors greater, and looking the wrong way sees nothing', () => {
  const greater = tTestPower({ ...q, difference: 6, alternative: 'greater' }).power
  expect(tTestPower({ ...q, difference: -6, alternative: 'less' }).power).toBeCloseTo(greater, 13)
  expect(tTestPower({ ...q, difference: -6, alternative: 'greater' }).power).toBeLessThan(1e-4)
})

test.each([
  ['alpha', { alpha: 0 }, 'out-of-range'],
  ['alpha', { alpha: 0.6 }, 'out-of-range'],
  ['difference', { difference: NaN }, 'not-finite'],
  ['difference', { difference: 2001 }, 'far-beyond-spread'],
])('bad input is refused at its field: %s %j', (field, change, code) => {
  expect(() => tTestPower({ ...q, ...change })).toThrow(code)
  expect(() => tTestPower({ ...q, ...change })).toThrow(`"${field}"`)
})

test('a difference of nothing, or on the other side, cannot be sized for', () => {
  expect(() => mustBeSeeable('difference', 0, 'two-sided')).toThrow('out-of-range')
  expect(() => mustBeSeeable('difference', -3, 'greater')).toThrow('other-direction')
  expect(() => mustBeSeeable('difference', 3, 'less')).toThrow('other-direction')
  expect(() => mustBeSeeable('difference', -3, 'two-sided')).not.toThrow()
})

import { expect, test } from 'vitest'
import { twoArmsPower } from '@/lib/calc/plan/two-arms-power'
import { twoArmsSize } from '@/lib/calc/plan/two-arms-size'

const q = { power: 0.8, difference: 5, sd: 4, alpha: 0.05, alternative: 'two-sided' } as const

test('the number reaches the power, one fewer does not', () => {
  for (const power of [0.3, 0.8, 0.99]) {
    const got = twoArmsSize({ ...q, power })
    expect(got.power).toBe(twoArmsPower({ ...q, countPerArm: got.count }).power)
    expect(got.power).toBeGreaterThanOrEqual(power)
    expect(got.powerOneFewer).toBeLessThan(power)
  }
})

test('a huge difference needs the least number, a tiny one is out of reach', () => {
  expect(twoArmsSize({ ...q, difference: 100 })).toMatchObject({ count: 2, countContinuous: null })
  expect(() => twoArmsSize({ ...q, difference: 0.01 })).toThrow('power-out-of-reach')
  expect(() => twoArmsSize({ ...q, difference: 0 })).toThrow('"difference"')
  expect(() => twoArmsSize({ ...q, difference: -5, alternative: 'greater' })).toThrow('other-direction')
  expect(() => twoArmsSize({ ...q, power: 1 })).toThrow('"power"')
})

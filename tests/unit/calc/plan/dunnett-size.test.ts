import { expect, test } from 'vitest'
import { dunnettPower } from '@/lib/calc/plan/dunnett-power'
import { dunnettSize } from '@/lib/calc/plan/dunnett-size'

const q = { power: 0.8, goal: 'each', differences: [80, 60], sd: 50, alpha: 0.05, alternative: 'greater' } as const

test('each needs the number of the smallest difference, any needs fewer', () => {
  const each = dunnettSize(q)
  const at = (count: number) => Math.min(...dunnettPower({ ...q, controlCount: count, armCount: count }).powerEach)
  expect(at(each.count)).toBeGreaterThanOrEqual(0.8)
  expect(at(each.count - 1)).toBeLessThan(0.8)
  expect(dunnettSize({ ...q, goal: 'any' }).count).toBeLessThan(each.count)
})

test('an arm without a difference is fine for any, and refused for each', () => {
  expect(dunnettSize({ ...q, goal: 'any', differences: [80, 0] }).count).toBeGreaterThan(2)
  expect(() => dunnettSize({ ...q, differences: [80, 0] })).toThrow('"differences[1]"')
  expect(() => dunnettSize({ ...q, goal: 'any', differences: [-80, -60] })).toThrow('other-direction')
  expect(() => dunnettSize({ ...q, differences: [] })).toThrow('empty')
})

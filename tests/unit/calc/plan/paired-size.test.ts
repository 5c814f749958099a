import { expect, test } from 'vitest'
import { pairedPower } from '@/lib/calc/plan/paired-power'
import { pairedSize } from '@/lib/calc/plan/paired-size'

const q = { power: 0.9, difference: 40, sdOfDifferences: 40, alpha: 0.05, alternative: 'greater' } as const

test('the number reaches the power, one fewer does not', () => {
  const got = pairedSize(q)
  expect(got.power).toBe(pairedPower({ ...q, pairs: got.count }).power)
  expect(got.power).toBeGreaterThanOrEqual(0.9)
  expect(got.powerOneFewer).toBeLessThan(0.9)
})

test('a difference of nothing, or on the other side, is refused', () => {
  expect(() => pairedSize({ ...q, difference: 0 })).toThrow('"difference"')
  expect(() => pairedSize({ ...q, difference: -40 })).toThrow('other-direction')
})

import { expect, test } from 'vitest'
import { batchesSize } from '@/lib/calc/plan/batches-size'
import { twoArmsSize } from '@/lib/calc/plan/two-arms-size'

const q = {
  power: 0.8,
  loavesPerBatch: 1,
  batchSd: 40,
  loafSd: 30,
  difference: 60,
  alpha: 0.05,
  alternative: 'two-sided',
} as const

test('one loaf a dough is the plain comparison of two arms, with both spreads in one', () => {
  const plain = twoArmsSize({ power: 0.8, difference: 60, sd: 50, alpha: 0.05, alternative: 'two-sided' })
  const got = batchesSize(q)
  expect(got.count).toBe(plain.count)
  expect(got.countContinuous).toBeCloseTo(plain.countContinuous!, 7)
})

test('more loaves never need more doughs', () => {
  expect(batchesSize({ ...q, loavesPerBatch: 6 }).count).toBeLessThanOrEqual(batchesSize(q).count)
})

test('a difference of nothing is refused', () => {
  expect(() => batchesSize({ ...q, difference: 0 })).toThrow('"difference"')
})

import { expect, test } from 'vitest'
import { mixStep, PURE } from '@/lib/calc/weighing/mix-step'

const scales = [{ id: 'a', resolutionG: 1, capacityG: 1000, uncertaintyG: 0.5 }]

test('two steps dilute by both, and add what the second weighings bring', () => {
  const first = mixStep(scales, PURE, 10, 90)
  if (first === null) throw new Error('no mix')
  const second = mixStep(scales, first, 20, 80)
  if (second === null) throw new Error('no mix')
  expect(second).toMatchObject({ productG: 10, madeG: 200, totalG: 100 })
  expect(second.share).toBeCloseTo(0.02, 14)
  expect(first.variance).toBeCloseTo(0.81 * (0.05 ** 2 + (0.5 / 90) ** 2), 14)
  expect(second.variance - first.variance).toBeCloseTo(0.64 * (0.025 ** 2 + (0.5 / 80) ** 2), 14)
})

test('what no scale carries is no mix', () => expect(mixStep(scales, PURE, 10, 1001)).toBeNull())

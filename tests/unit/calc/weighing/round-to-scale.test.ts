import { expect, test } from 'vitest'
import { roundToScaleG } from '@/lib/calc/weighing/round-to-scale'

test('the nearest mark, a half upwards, without binary dust', () => {
  expect(roundToScaleG({ massG: 12.34, resolutionG: 0.5 })).toBe(12.5)
  expect(roundToScaleG({ massG: 2.5, resolutionG: 1 })).toBe(3)
  expect(roundToScaleG({ massG: 0.29, resolutionG: 0.1 })).toBe(0.3)
  expect(roundToScaleG({ massG: 0.15, resolutionG: 0.1 })).toBe(0.2)
})
test('a scale without resolution is refused', () =>
  expect(() => roundToScaleG({ massG: 1, resolutionG: 0 })).toThrow(expect.objectContaining({ code: 'out-of-range' })))

import { expect, test } from 'vitest'
import { netWeightUncertaintyG } from '@/lib/calc/weighing/net-weight-uncertainty'

test('resolution and repeatability add as squares, twice for two readings', () => {
  expect(netWeightUncertaintyG({ resolutionG: 1, repeatabilityG: 0 })).toBeCloseTo(Math.sqrt(1 / 6), 12)
  expect(netWeightUncertaintyG({ resolutionG: 1e-9, repeatabilityG: 1 })).toBeCloseTo(Math.SQRT2, 12)
})
test('a negative spread is refused', () =>
  expect(() => netWeightUncertaintyG({ resolutionG: 1, repeatabilityG: -1 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  ))

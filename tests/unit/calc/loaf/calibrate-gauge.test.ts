import { expect, test } from 'vitest'
import { calibrateGauge } from '@/lib/calc/loaf/calibrate-gauge'
import { displacedVolumeMl } from '@/lib/calc/loaf/displaced-volume'

test('with the offset taken off, the block reads its own volume', () => {
  const { offsetMl, factor, repeatabilityMl, offsetUncertaintyMl } = calibrateGauge({
    readingsMl: [1510, 1520, 1530],
    blockVolumeMl: 1500,
    blockUncertaintyMl: 2,
  })
  expect(offsetMl).toBe(20)
  expect(displacedVolumeMl({ withLoafMl: 1520, withoutLoafMl: 0, offsetMl })).toBe(1500)
  expect(1520 * factor).toBeCloseTo(1500, 12)
  expect(repeatabilityMl).toBeCloseTo(10, 12)
  expect(offsetUncertaintyMl).toBeCloseTo(Math.sqrt(100 / 3 + 4), 12)
})
test('one reading gives an offset without an uncertainty', () =>
  expect(calibrateGauge({ readingsMl: [1510], blockVolumeMl: 1500, blockUncertaintyMl: 2 })).toMatchObject({
    offsetMl: 10,
    offsetUncertaintyMl: null,
  }))

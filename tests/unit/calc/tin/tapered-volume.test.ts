import { expect, test } from 'vitest'
import { taperedVolume } from '@/lib/calc/tin/tapered-volume'

test('straight sides are length times width times depth', () => {
  const found = taperedVolume({ topLengthMm: 300, topWidthMm: 100, baseLengthMm: 300, baseWidthMm: 100, depthMm: 80 })
  expect(found.tinVolumeMl).toBeCloseTo(2400, 10)
  expect(found.topTimesDepthMl).toBeCloseTo(2400, 10)
})

test('a wedge that comes to an edge is half of the block', () => {
  const wedge = taperedVolume({ topLengthMm: 300, topWidthMm: 100, baseLengthMm: 300, baseWidthMm: 1e-9, depthMm: 80 })
  expect(wedge.tinVolumeMl).toBeCloseTo(1200, 6)
})

test('cutting a tin level in two loses nothing', () => {
  const whole = taperedVolume({
    topLengthMm: 240,
    topWidthMm: 120,
    baseLengthMm: 200,
    baseWidthMm: 100,
    depthMm: 90,
  }).tinVolumeMl
  const upper = taperedVolume({
    topLengthMm: 240,
    topWidthMm: 120,
    baseLengthMm: 220,
    baseWidthMm: 110,
    depthMm: 45,
  }).tinVolumeMl
  const lower = taperedVolume({
    topLengthMm: 220,
    topWidthMm: 110,
    baseLengthMm: 200,
    baseWidthMm: 100,
    depthMm: 45,
  }).tinVolumeMl
  expect(upper + lower).toBeCloseTo(whole, 10)
})

test('a side of nothing is refused by its name', () => {
  expect(() =>
    taperedVolume({ topLengthMm: 240, topWidthMm: 120, baseLengthMm: 0, baseWidthMm: 100, depthMm: 90 }),
  ).toThrow(expect.objectContaining({ facts: expect.objectContaining({ field: 'baseLengthMm' }) }))
})

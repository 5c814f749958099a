import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { sameVolumeRoute } from '@/lib/calc/cost/same-volume-route'

const q = {
  scalingMassG: 600,
  volumeRatio: 1.1,
  lowerVolumeRatio: 1.05,
  upperVolumeRatio: 1.15,
  controlPerKgMinor: new Decimal(90),
  armPerKgMinor: new Decimal(95),
  hasDeclaredWeight: false,
}

test('a tenth more volume is a piece of ten elevenths, and saves what the dearer dough leaves of that', () => {
  const route = sameVolumeRoute(q)
  expect(route.scalingMassG).toBeCloseTo(545.4545, 4)
  expect(route.controlPieceMinor.toNumber()).toBe(54)
  expect(route.savedPerPieceMinor.toNumber()).toBeCloseTo(54 - 0.095 * 545.4545454545, 8)
  expect(route.cautions).toEqual(['proposal-to-bake'])
})

test('the interval follows that of the volume, and the volume at the mass found is the control’s', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 2, noNaN: true }),
      fc.double({ min: 0, max: 0.3, noNaN: true }),
      (volumeRatio, half) => {
        const route = sameVolumeRoute({
          ...q,
          volumeRatio,
          lowerVolumeRatio: volumeRatio * (1 - half),
          upperVolumeRatio: volumeRatio * (1 + half),
        })
        expect(route.scalingMassG * volumeRatio).toBeCloseTo(600, 8)
        expect(route.lowerScalingMassG).toBeLessThanOrEqual(route.scalingMassG)
        expect(route.upperScalingMassG).toBeGreaterThanOrEqual(route.scalingMassG)
        expect(route.lowerSavedPerPieceMinor.lessThanOrEqualTo(route.upperSavedPerPieceMinor)).toBe(true)
      },
    ),
  ))

test('bread with a declared weight, and a gain that is not sure, are spoken of', () =>
  expect(sameVolumeRoute({ ...q, lowerVolumeRatio: 0.99, hasDeclaredWeight: true }).cautions).toEqual([
    'proposal-to-bake',
    'declared-weight',
    'ratio-below-one',
  ]))

test('an interval that does not hold its ratio, no dough and a price below nothing are refused', () => {
  expect(() => sameVolumeRoute({ ...q, lowerVolumeRatio: 1.2 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'lowerVolumeRatio' }) }),
  )
  expect(() => sameVolumeRoute({ ...q, scalingMassG: 0 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  expect(() => sameVolumeRoute({ ...q, armPerKgMinor: new Decimal(-1) })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'armPerKgMinor' }) }),
  )
})

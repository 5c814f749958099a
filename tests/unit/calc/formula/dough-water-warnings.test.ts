import fc from 'fast-check'
import { expect, test } from 'vitest'
import { doughWaterWarnings } from '@/lib/calc/formula/dough-water-warnings'

test('a bread dough passes, and none, little and much water are told apart', () => {
  expect(doughWaterWarnings(0)).toEqual(['no-water'])
  expect(doughWaterWarnings(24.9)).toEqual(['stiffer-than-dough'])
  expect(doughWaterWarnings(150.1)).toEqual(['wetter-than-dough'])
  fc.assert(
    fc.property(fc.double({ min: 25, max: 150, noNaN: true }), (pctFlour) => {
      expect(doughWaterWarnings(pctFlour)).toEqual([])
    }),
  )
})

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { curveAt } from '@/lib/calc/dose-response/curve-at'
import type { CurveModel } from '@/lib/calc/dose-response/types'

const estimates: Record<CurveModel, number[]> = { linear: [3, -2], quadratic: [1, 4, -0.3], saturating: [2, 8, 1.7] }
const dose = fc.integer({ min: 1, max: 80 }).map((value) => value / 8)

test('each derivative is the change of what it derives', () => {
  fc.assert(
    fc.property(fc.constantFrom<CurveModel>('linear', 'quadratic', 'saturating'), dose, (model, at) => {
      const curve = { model, estimates: estimates[model] }
      const step = 1e-5
      const change = (of: (h: number) => number) => (of(step) - of(-step)) / (2 * step)
      const here = curveAt(curve, at)
      expect(here.slope).toBeCloseTo(
        change((h) => curveAt(curve, at + h).response),
        5,
      )
      expect(here.bend).toBeCloseTo(
        change((h) => curveAt(curve, at + h).slope),
        5,
      )
      const with_ = (i: number, h: number) =>
        curveAt({ model, estimates: curve.estimates.map((value, j) => (i === j ? value + h : value)) }, at)
      expect(here.gradient).toHaveLength(curve.estimates.length)
      here.gradient.forEach((value, i) =>
        expect(value).toBeCloseTo(
          change((h) => with_(i, h).response),
          5,
        ),
      )
      here.slopeGradient.forEach((value, i) =>
        expect(value).toBeCloseTo(
          change((h) => with_(i, h).slope),
          5,
        ),
      )
    }),
  )
})
test('half the effect is there at the dose of half the effect', () => {
  expect(curveAt({ model: 'saturating', estimates: [2, 8, 1.7] }, 1.7).response).toBe(6)
  expect(curveAt({ model: 'saturating', estimates: [2, 8, 1.7] }, 0).response).toBe(2)
})

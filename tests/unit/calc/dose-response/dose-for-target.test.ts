import fc from 'fast-check'
import { expect, test } from 'vitest'
import { curveAt } from '@/lib/calc/dose-response/curve-at'
import { doseForTarget } from '@/lib/calc/dose-response/dose-for-target'
import { estimateCurve } from '@/lib/calc/dose-response/estimate-curve'
import type { CurveModel } from '@/lib/calc/dose-response/types'
import { expectRefusal } from '@/tests/support/arm-rows'
import { aboutCurve, saturated, tenThousandDoses } from '@/tests/support/dose-rows'

const confidence = 0.95
const curves: Record<CurveModel, (dose: number) => number> = {
  linear: (dose) => 20 - 3 * dose,
  quadratic: (dose) => 100 - 6 * dose + 0.3 * dose * dose,
  saturating: saturated(100, 40, 1.5),
}

test('the dose gives the target back, whichever the curve, and lies in its interval', () => {
  fc.assert(
    fc.property(
      fc.constantFrom<CurveModel>('linear', 'quadratic', 'saturating'),
      fc.integer({ min: 1, max: 63 }),
      (model, eighths) => {
        const wanted = eighths / 8
        const q = { rows: aboutCurve(curves[model], 0.5), model, confidence }
        const got = doseForTarget({ ...q, targetResponse: curves[model](wanted) })
        expect(got.dose).toBeCloseTo(wanted, 6)
        expect(curveAt(estimateCurve(q).fit, got.dose).response).toBeCloseTo(curves[model](wanted), 7)
        expect(got.low).toBeLessThan(got.dose)
        expect(got.high).toBeGreaterThan(got.dose)
      },
    ),
  )
})
test('Fieller’s limits for a line hold the dose, and have no end where the line may be level', () => {
  const rows = aboutCurve(curves.linear, 0.5)
  const { dose, fiellerLow, fiellerHigh } = doseForTarget({ rows, model: 'linear', confidence, targetResponse: 8 })
  expect(fiellerLow!).toBeLessThan(dose)
  expect(fiellerHigh!).toBeGreaterThan(dose)
  const level = doseForTarget({
    rows: aboutCurve((dose) => 20 + 0.1 * dose, 5),
    model: 'linear',
    confidence,
    targetResponse: 20.4,
  })
  expect(level).toMatchObject({ fiellerLow: null, fiellerHigh: null })
  expect(doseForTarget({ rows, model: 'quadratic', confidence, targetResponse: 8 }).fiellerLow).toBeNull()
})
test('a curve that is not claimed says so beside its dose', () => {
  const rows = aboutCurve(curves.saturating, 0.5, [0.5, 1, 2, 8])
  expect(doseForTarget({ rows, model: 'saturating', confidence, targetResponse: 120 })).toMatchObject({
    claimed: false,
    notClaimed: ['no-zero-dose'],
  })
})
test('a target that no dose gives, or none that was baked, is refused', () => {
  const of = (model: CurveModel, targetResponse: number) => () =>
    doseForTarget({ rows: aboutCurve(curves[model], 0.5), model, confidence, targetResponse })
  expectRefusal(of('saturating', 150), 'not-possible', 'target-out-of-reach')
  expectRefusal(of('saturating', 90), 'not-possible', 'target-out-of-reach')
  expectRefusal(of('quadratic', 60), 'not-possible', 'target-out-of-reach')
  expectRefusal(of('linear', -30), 'not-possible', 'beyond-tested-doses')
  expectRefusal(of('linear', 30), 'not-possible', 'beyond-tested-doses')
  expectRefusal(of('linear', NaN), 'not-finite')
})
test('ten thousand values are no matter', () => {
  expect(
    doseForTarget({ rows: tenThousandDoses, model: 'saturating', confidence, targetResponse: 2550 }).dose,
  ).toBeCloseTo(2, 0)
})

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import { doseGroups } from '@/lib/calc/dose-response/dose-groups'
import { fitSaturating } from '@/lib/calc/dose-response/fit-saturating'
import { expectRefusal } from '@/tests/support/arm-rows'
import { aboutCurve, anyRows, saturated, tenThousandDoses } from '@/tests/support/dose-rows'

test('values equally far to both sides of a saturating curve, rising or falling, give that very curve back', () => {
  const size = fc.integer({ min: 20, max: 400 })
  fc.assert(
    fc.property(
      size,
      size,
      fc.constantFrom(-1, 1),
      fc.integer({ min: 2, max: 80 }),
      fc.boolean(),
      (e0, emax, sign, eighths, given) => {
        const ed50 = eighths / 8
        const data = doseGroups(aboutCurve(saturated(e0, sign * emax, ed50), 0.5))
        const { estimates } = fitSaturating(data, given ? e0 : undefined)
        expect(estimates[0]! / e0).toBeCloseTo(1, 7)
        expect(estimates[1]! / (sign * emax)).toBeCloseTo(1, 7)
        expect(estimates[2]! / ed50).toBeCloseTo(1, 7)
      },
    ),
  )
})
test('whatever the values, there is an answer or a refusal that says why, and never what is no number', () => {
  fc.assert(
    fc.property(anyRows, (rows) => {
      try {
        const fit = fitSaturating(doseGroups(rows))
        for (const value of [...fit.estimates, ...fit.covariance.flat(), fit.residualSd])
          expect(Number.isFinite(value)).toBe(true)
        expect(fit.estimates[2]).toBeGreaterThan(0)
      } catch (error) {
        if (!(error instanceof CalcError)) throw error
        expect(error.code).toBe('no-convergence')
        expect(['no-bend', 'step', 'flat']).toContain(error.facts.reason)
      }
    }),
  )
})
test('no other dose of half the effect fits better', () => {
  const rows = [76, 47, 97, 107, 123, 139, 159, 152].map((y, i) => ({
    dose: [0.02, 0.06, 0.11, 0.22][Math.floor(i / 2)]!,
    y,
  }))
  const data = doseGroups(rows)
  const { estimates, residualSumSquares } = fitSaturating(data, 0)
  const missed = (emax: number, ed50: number) =>
    rows.reduce((sum, { dose, y }) => sum + (y - saturated(0, emax, ed50)(dose)) ** 2, 0)
  expect(missed(estimates[1]!, estimates[2]!)).toBeCloseTo(residualSumSquares, 6)
  for (const factor of [0.98, 1.02]) {
    expect(missed(estimates[1]! * factor, estimates[2]!)).toBeGreaterThan(residualSumSquares)
    expect(missed(estimates[1]!, estimates[2]! * factor)).toBeGreaterThan(residualSumSquares)
  }
})
test('a straight line, a curve that gains ever more and a step are refused by their names', () => {
  expectRefusal(() => fitSaturating(doseGroups(aboutCurve((dose) => 10 + dose * dose, 1))), 'no-convergence', 'no-bend')
  expectRefusal(
    () => fitSaturating(doseGroups(aboutCurve((dose) => (dose > 0 ? 20 : 10), 1))),
    'no-convergence',
    'step',
  )
})
test('values all alike, too few doses and a given start with one dose are refused', () => {
  expectRefusal(() => fitSaturating(doseGroups(aboutCurve(() => 7, 0))), 'not-possible', 'zero-variance')
  expectRefusal(() => fitSaturating(doseGroups(aboutCurve(saturated(1, 9, 1), 0))), 'not-possible', 'zero-variance')
  expectRefusal(() => fitSaturating(doseGroups(aboutCurve((dose) => dose, 1, [0, 1]))), 'not-possible', 'few-doses')
  expectRefusal(() => fitSaturating(doseGroups(aboutCurve((dose) => dose, 1, [0, 1])), 0), 'not-possible', 'few-doses')
})
test('ten thousand values at as many doses', () => {
  const { estimates } = fitSaturating(doseGroups(tenThousandDoses))
  expect(Math.abs(estimates[1]! - 300)).toBeLessThan(10)
})

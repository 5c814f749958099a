import fc from 'fast-check'
import { expect, test } from 'vitest'
import { doseGroups } from '@/lib/calc/dose-response/dose-groups'
import { fitPolynomial } from '@/lib/calc/dose-response/fit-polynomial'
import { expectRefusal, reading } from '@/tests/support/arm-rows'
import { aboutCurve, anyRows, ladder } from '@/tests/support/dose-rows'

test('values equally far to both sides of a line or parabola give that very curve back', () => {
  fc.assert(
    fc.property(reading, reading, reading, fc.boolean(), (a, b, c, straight) => {
      const bend = straight ? 0 : c
      const data = doseGroups(aboutCurve((dose) => a + b * dose + bend * dose * dose, 1))
      const { estimates, lackSumSquares } = fitPolynomial(data, straight ? 'linear' : 'quadratic')
      const wanted = straight ? [a, b] : [a, b, c]
      const scale = 1 + Math.abs(a) + Math.abs(b) + Math.abs(bend)
      wanted.forEach((value, i) => expect(Math.abs(estimates[i]! - value) / scale).toBeLessThan(1e-10))
      expect(lackSumSquares / scale ** 2).toBeLessThan(1e-18)
    }),
  )
})
test('doses in another unit: estimates follow, the residual stays', () => {
  fc.assert(
    fc.property(anyRows, fc.constantFrom(1e-6, 0.01, 1e6), (rows, unit) => {
      const got = fitPolynomial(doseGroups(rows), 'quadratic')
      const other = fitPolynomial(doseGroups(rows.map(({ dose, y }) => ({ dose: dose * unit, y }))), 'quadratic')
      expect(other.residualSd / got.residualSd).toBeCloseTo(1, 9)
      got.estimates.forEach((value, i) =>
        expect(Math.abs(other.estimates[i]! * unit ** i - value)).toBeLessThan(1e-6 * (1 + Math.abs(value))),
      )
      got.covariance.forEach((row, i) =>
        expect((other.covariance[i]![i]! * unit ** (2 * i)) / row[i]!).toBeCloseTo(1, 6),
      )
    }),
  )
})
test('a line takes two doses, a parabola three', () => {
  const two = doseGroups(aboutCurve((dose) => dose, 1, ladder.slice(0, 2)))
  expect(fitPolynomial(two, 'linear').residualDf).toBe(2)
  expectRefusal(() => fitPolynomial(two, 'quadratic'), 'not-possible', 'few-doses')
  expectRefusal(
    () => fitPolynomial(doseGroups(aboutCurve((dose) => dose, 1, [1])), 'linear'),
    'not-possible',
    'few-doses',
  )
})

import { expect, test } from 'vitest'
import { doseGroups } from '@/lib/calc/dose-response/dose-groups'
import { fitSaturating } from '@/lib/calc/dose-response/fit-saturating'
import { halfDoseInterval } from '@/lib/calc/dose-response/half-dose-interval'
import { saturatingProfile } from '@/lib/calc/dose-response/saturating-profile'
import { aboutCurve, saturated } from '@/tests/support/dose-rows'

const intervalOf = (ed50: number, off: number, confidence = 0.95) => {
  const data = doseGroups(aboutCurve(saturated(100, 40, ed50), off))
  const fit = fitSaturating(data)
  return { data, fit, ...halfDoseInterval(data, fit, { confidence }) }
}

test('at its ends the curve fits worse by just what F allows', () => {
  const { data, fit, low, high } = intervalOf(2, 2)
  expect(low).toBeLessThan(2)
  expect(high).toBeGreaterThan(2)
  for (const end of [low, high!]) {
    const worse = saturatingProfile(data, end, null).lackSumSquares - fit.lackSumSquares
    // F of 1 and 9 df at 0.95 is 5.117 in every table
    expect(worse / fit.residualSd ** 2).toBeCloseTo(5.117, 3)
  }
})
test('more confidence makes it wider', () => {
  const [wide, narrow] = [intervalOf(2, 2, 0.99), intervalOf(2, 2, 0.8)]
  expect(wide.low).toBeLessThan(narrow.low)
  expect(wide.high ?? Infinity).toBeGreaterThan(narrow.high!)
})
test('where a straight line would do as well it has no end, where a step would it begins at zero', () => {
  expect(intervalOf(9, 4).high).toBeNull()
  expect(intervalOf(0.05, 6).low).toBe(0)
})

import { expect, test } from 'vitest'
import { doseGroups } from '@/lib/calc/dose-response/dose-groups'
import { saturatingProfile } from '@/lib/calc/dose-response/saturating-profile'
import { aboutCurve, saturated } from '@/tests/support/dose-rows'

const data = doseGroups(aboutCurve(saturated(100, 40, 3), 2))

test('at its own dose of half the effect a curve misses nothing, and its slope there is none', () => {
  const got = saturatingProfile(data, 3, null)
  expect(got.emax).toBeCloseTo(40, 9)
  expect(got.e0 + data.origin).toBeCloseTo(100, 9)
  expect(got.lackSumSquares).toBeLessThan(1e-18)
  expect(got.derivative).toBeCloseTo(0, 9)
})
test.each([null, 100 - data.origin])('the slope is that of the residual by the log of the dose (e0 %s)', (e0) => {
  for (const ed50 of [0.2, 1, 8, 60]) {
    const at = (log: number) => saturatingProfile(data, Math.exp(log), e0).lackSumSquares
    const change = (at(Math.log(ed50) + 1e-5) - at(Math.log(ed50) - 1e-5)) / 2e-5
    expect(saturatingProfile(data, ed50, e0).derivative / change).toBeCloseTo(1, 5)
  }
})
test('its limit is the straight line', () => {
  const line = saturatingProfile(data, Infinity, null)
  expect(saturatingProfile(data, 1e7, null).lackSumSquares / line.lackSumSquares).toBeCloseTo(1, 4)
})

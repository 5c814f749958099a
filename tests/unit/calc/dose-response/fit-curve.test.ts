import { expect, test } from 'vitest'
import { fitCurve } from '@/lib/calc/dose-response/fit-curve'
import { expectRefusal } from '@/tests/support/arm-rows'
import { aboutCurve, saturated, tenThousandDoses } from '@/tests/support/dose-rows'

const confidence = 0.95

test('estimates come with error, limits and degrees of freedom; a given start is no estimate', () => {
  const rows = aboutCurve(saturated(100, 40, 1), 1)
  const names = (fixedE0?: number) =>
    fitCurve({ rows, model: 'saturating', confidence, fixedE0 }).parameters.map(({ name }) => name)
  expect(names()).toEqual(['e0', 'emax', 'ed50'])
  expect(names(100)).toEqual(['emax', 'ed50'])
  for (const { estimate, se, low, high, df } of fitCurve({ rows, model: 'saturating', confidence }).parameters) {
    expect(se).toBeGreaterThan(0)
    expect(low).toBeLessThan(estimate)
    expect(high).toBeGreaterThan(estimate)
    expect(df).toBe(9)
  }
})
test('an interval without an end is said, and then no curve is claimed', () => {
  const got = fitCurve({ rows: aboutCurve(saturated(100, 40, 9), 4), model: 'saturating', confidence })
  expect(got).toMatchObject({ claimed: false, notClaimed: ['interval-not-bounded'] })
  expect(got.parameters[2]!.high).toBeNull()
})
test('the turn of a quadratic curve is found, and whether it lies among the doses', () => {
  const turn = (at: number, sign: number) =>
    fitCurve({ rows: aboutCurve((dose) => 50 + sign * (dose - at) ** 2, 1), model: 'quadratic', confidence }).vertex!
  expect(turn(5, -1)).toMatchObject({ kind: 'top', withinTested: true })
  expect(turn(5, -1).dose).toBeCloseTo(5, 9)
  expect(turn(5, -1).response).toBeCloseTo(50, 8)
  expect(turn(20, 1)).toMatchObject({ kind: 'bottom', withinTested: false })
  expect(fitCurve({ rows: aboutCurve((dose) => dose, 1), model: 'linear', confidence }).vertex).toBeNull()
})
test('ten thousand values are no matter', () => {
  for (const model of ['linear', 'quadratic', 'saturating'] as const) {
    expect(fitCurve({ rows: tenThousandDoses, model, confidence })).toMatchObject({ lackOfFit: null, pureErrorDf: 0 })
  }
})
test('identical values and values exactly on the curve are refused', () => {
  for (const model of ['linear', 'quadratic', 'saturating'] as const) {
    expectRefusal(() => fitCurve({ rows: aboutCurve(() => 5, 0), model, confidence }), 'not-possible', 'zero-variance')
  }
  expectRefusal(
    () => fitCurve({ rows: aboutCurve((dose) => 3 * dose, 0), model: 'linear', confidence }),
    'not-possible',
    'zero-variance',
  )
})

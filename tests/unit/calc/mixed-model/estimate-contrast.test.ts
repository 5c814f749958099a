import { expect, test } from 'vitest'
import { tTail } from '@/lib/calc/distributions/t-tail'
import { estimateContrast } from '@/lib/calc/mixed-model/estimate-contrast'

const common = {
  weights: [-1, 1],
  coefficients: [4, 7],
  covariance: [
    [0.5, 0],
    [0, 0.25],
  ],
  residualVariance: 3,
}

test('estimate, standard error and both approximations, p two-sided', () => {
  const first = [
    [
      [2, 0],
      [0, 4],
    ],
  ]
  const kenwardRoger = {
    covariance: common.covariance,
    slopes: [common.covariance],
    adjusted: [
      [0.6, 0],
      [0, 0.3],
    ],
    varianceCovariance: [[0.2]],
  }
  const got = estimateContrast({ ...common, smallSample: { kenwardRoger, first, observed: [[0.2]] } })
  expect(got.estimate).toBe(3)
  expect(got.se).toBeCloseTo(1.5, 14)
  expect(got.satterthwaite!.df).toBeCloseTo(10, 10)
  expect(got.satterthwaite!.t).toBeCloseTo(2, 14)
  expect(got.satterthwaite!.p).toBeCloseTo(2 * tTail({ t: 2, df: 10, tail: 'upper' }), 12)
  expect(got.kenwardRoger!.df).toBeCloseTo(10, 8)
  expect(got.kenwardRoger!.se).toBeCloseTo(Math.sqrt(2.7), 14)
})

test('at a variance of zero there is no more than the estimate and its standard error', () => {
  expect(estimateContrast({ ...common, smallSample: null })).toEqual({
    estimate: 3,
    se: 1.5,
    satterthwaite: null,
    kenwardRoger: null,
  })
})

import { expect, test } from 'vitest'
import { kenwardRogerTest } from '@/lib/calc/mixed-model/kenward-roger-test'

// variances known from one mean square of `df` degrees of freedom: the classical F test
const classical = (contrasts: number, df: number) => {
  const identity = Array.from({ length: contrasts }, (_, i) =>
    Array.from({ length: contrasts }, (__, j) => (i === j ? 1 : 0)),
  )
  return kenwardRogerTest({
    weights: identity,
    coefficients: identity.map((_, i) => i + 1),
    kenwardRoger: { covariance: identity, slopes: [identity], adjusted: identity, varianceCovariance: [[2 / df]] },
    residualVariance: 2,
  })
}

test.each([
  [1, 1],
  [1, 2],
  [1, 3],
  [1, 4],
  [1, 9],
  [2, 2],
  [2, 4],
  [2, 7],
  [3, 4],
  [3, 5],
  [5, 30],
])('%i contrasts on one mean square of %i degrees of freedom: exactly F', (contrasts, df) => {
  const got = classical(contrasts, df)!
  const squares = Array.from({ length: contrasts }, (_, i) => (i + 1) ** 2).reduce((sum, value) => sum + value, 0)
  expect(got.df1).toBe(contrasts)
  expect(got.df2).toBeCloseTo(df, 8)
  expect(got.f).toBeCloseTo(squares / contrasts / 2, 8)
})

test('moments that no F distribution has give null', () => {
  const kenwardRoger = { covariance: [[1]], slopes: [[[1]]], adjusted: [[1]], varianceCovariance: [[NaN]] }
  expect(kenwardRogerTest({ weights: [[1]], coefficients: [1], kenwardRoger, residualVariance: 1 })).toBeNull()
})

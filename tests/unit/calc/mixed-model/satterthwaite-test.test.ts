import { expect, test } from 'vitest'
import { fTail } from '@/lib/calc/distributions/f-tail'
import { satterthwaiteTest } from '@/lib/calc/mixed-model/satterthwaite-test'

const two = {
  coefficients: [3, 2],
  covariance: [
    [1, 0],
    [0, 1],
  ],
  residualVariance: 0.5,
}

test('uncorrelated contrasts of like degrees of freedom keep them, and F is the mean of t²', () => {
  const got = satterthwaiteTest({
    ...two,
    weights: [
      [1, 0],
      [0, 1],
    ],
    first: [
      [
        [1, 0],
        [0, 1],
      ],
    ],
    varianceCovariance: [[0.2]],
  })
  expect(got.df1).toBe(2)
  expect(got.df2).toBeCloseTo(10, 12)
  expect(got.f).toBeCloseTo((9 + 4) / 2 / 0.5, 12)
  expect(got.p).toBe(fTail({ f: got.f, df1: 2, df2: got.df2, tail: 'upper' }))
})

test('of unlike ones the denominator gives F the mean of those t²', () => {
  const first = [
    [
      [1, 0],
      [0, 0],
    ],
    [
      [0, 0],
      [0, 1],
    ],
  ]
  const at = (a: number, b: number) =>
    satterthwaiteTest({
      ...two,
      weights: [
        [1, 0],
        [0, 1],
      ],
      first,
      varianceCovariance: [
        [2 / a, 0],
        [0, 2 / b],
      ],
    }).df2
  const expected = 6 / 4 + 20 / 18
  expect(at(6, 20)).toBeCloseTo((2 * expected) / (expected - 2), 10)
  expect(at(2, 20)).toBe(2)
})

test('one contrast is the square of its t', () => {
  const got = satterthwaiteTest({
    ...two,
    weights: [[1, -1]],
    first: [
      [
        [1, 0],
        [0, 1],
      ],
    ],
    varianceCovariance: [[0.2]],
  })
  expect(got.f).toBeCloseTo(1 / (2 * 0.5), 12)
  expect(got.df2).toBeCloseTo(10, 12)
})

import { expect, test } from 'vitest'
import { leastSquares } from '@/lib/calc/analysis/least-squares'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'

test('residuals stand at right angles to every column, and sums of squares add up', () => {
  const random = seededRandom('least squares')
  const x = Array.from({ length: 12 }, () => [1, normalDeviate(random), normalDeviate(random)])
  const y = x.map(() => normalDeviate(random))
  const fit = leastSquares({ x, y })
  const residuals = x.map((row, i) => y[i]! - row.reduce((sum, v, j) => sum + v * fit.coefficients[j]!, 0))
  for (let j = 0; j < 3; j++) expect(x.reduce((sum, row, i) => sum + row[j]! * residuals[i]!, 0)).toBeCloseTo(0, 12)
  expect(residuals.reduce((sum, r) => sum + r * r, 0)).toBeCloseTo(fit.residualSumSquares, 12)
  expect(fit.effects.reduce((sum, e) => sum + e * e, 0)).toBeCloseTo(
    y.reduce((sum, v) => sum + v * v, 0),
    12,
  )
})

test('the covariance is the inverse of the normal matrix', () => {
  const x = [
    [1, 0],
    [1, 1],
    [1, 2],
    [1, 5],
  ]
  const { unscaledCovariance } = leastSquares({ x, y: [1, 2, 2, 4] })
  // XᵀX = [[4, 8], [8, 30]], determinant 56
  expect(unscaledCovariance[0]![0]).toBeCloseTo(30 / 56, 14)
  expect(unscaledCovariance[0]![1]).toBeCloseTo(-8 / 56, 14)
  expect(unscaledCovariance[1]![1]).toBeCloseTo(4 / 56, 14)
})

test('a column made up of others, and too few rows, are refused', () => {
  expect(() =>
    leastSquares({
      x: [
        [1, 2],
        [1, 2],
        [1, 2],
      ],
      y: [1, 2, 3],
    }),
  ).toThrow('rank-deficient')
  expect(() => leastSquares({ x: [[1, 2]], y: [1] })).toThrow('wrong-shape')
})

test('more columns than can be worked on in seconds are refused and do not hang', () => {
  const x = Array.from({ length: 2000 }, () => new Array<number>(1500).fill(1))
  expect(() => leastSquares({ x, y: x.map(() => 1) })).toThrow(
    expect.objectContaining({ code: 'not-possible', facts: expect.objectContaining({ reason: 'too-large' }) }),
  )
})

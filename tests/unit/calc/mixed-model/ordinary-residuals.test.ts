import { expect, test } from 'vitest'
import { leastSquares } from '@/lib/calc/analysis/least-squares'
import { ordinaryResiduals } from '@/lib/calc/mixed-model/ordinary-residuals'
import { mixedTrial, productsOf } from '@/tests/support/mixed-trials'

test('agrees with Householder reflections, and a large common part costs no digits', () => {
  const { rows, arms } = mixedTrial('ordinary', { arms: 3, blocks: 4, pieces: 3, batchSd: 1, unbalanced: true })
  const { u, cross } = productsOf({
    rows,
    model: { arms, fixed: ['block'], covariates: ['doughTempC'], random: ['batch'] },
  })
  const x = u.map((row) => row.slice(0, cross.p))
  const y = u.map((row) => row[cross.p]!)
  const exact = leastSquares({ x, y })
  const got = ordinaryResiduals({ x, y })
  got.coefficients.forEach((value, j) => expect(value).toBeCloseTo(exact.coefficients[j]!, 11))
  expect(got.residuals.reduce((sum, value) => sum + value * value, 0)).toBeCloseTo(exact.residualSumSquares, 10)
  const far = ordinaryResiduals({ x, y: y.map((value) => value + 2 ** 30) })
  far.residuals.forEach((value, i) => expect(value).toBeCloseTo(got.residuals[i]!, 5))
})

import { expect, test } from 'vitest'
import { matrixProduct } from '@/lib/calc/mixed-model/matrix-product'
import { spdInverse } from '@/lib/calc/mixed-model/spd-inverse'
import { traceOfProduct } from '@/lib/calc/mixed-model/trace-of-product'
import { weightedProducts } from '@/lib/calc/mixed-model/weighted-products'
import { withResidual } from '@/lib/calc/mixed-model/with-residual'
import { denseV, mixedTrial, near, productsOf, transposed } from '@/tests/support/mixed-trials'

test('the residual joins the variances with the products of its whole matrices', () => {
  const { rows, arms } = mixedTrial('residual', { arms: 2, blocks: 4, pieces: 3, batchSd: 1, unbalanced: true })
  const { cross, u, groups } = productsOf({ rows, model: { arms, random: ['batch', 'block'] } })
  const ratios = [0.8, 0.3]
  const { inverse } = spdInverse(denseV(groups, ratios))
  const got = withResidual(weightedProducts(cross, ratios), ratios, cross.n)
  const ut = transposed(u)
  const square = matrixProduct(inverse, inverse)
  expect(got.first[2]).toEqual(near(matrixProduct(ut, square, u), 9))
  expect(got.second[2]![2]).toEqual(near(matrixProduct(ut, square, inverse, u), 9))
  expect(got.traces[2]).toBeCloseTo(
    inverse.reduce((sum, row, i) => sum + row[i]!, 0),
    10,
  )
  expect(got.doubleTraces[2]![2]).toBeCloseTo(traceOfProduct(inverse, inverse), 10)
  groups.forEach((g, k) => {
    const both = matrixProduct(ut, square, g, inverse, u)
    expect(got.second[2]![k]).toEqual(
      near(
        both.map((row, i) => row.map((value, j) => (value + both[j]![i]!) / 2)),
        9,
      ),
    )
    expect(got.second[k]![2]).toEqual(got.second[2]![k])
    expect(got.doubleTraces[k]![2]).toBeCloseTo(traceOfProduct(square, g), 10)
    expect(got.doubleTraces[2]![k]).toBe(got.doubleTraces[k]![2])
  })
})

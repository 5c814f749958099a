import { expect, test } from 'vitest'
import { matrixProduct } from '@/lib/calc/mixed-model/matrix-product'
import { projectedMoments } from '@/lib/calc/mixed-model/projected-moments'
import { spdInverse } from '@/lib/calc/mixed-model/spd-inverse'
import { traceOfProduct } from '@/lib/calc/mixed-model/trace-of-product'
import { weightedProducts } from '@/lib/calc/mixed-model/weighted-products'
import { denseV, mixedTrial, near, productsOf, transposed } from '@/tests/support/mixed-trials'

const { rows, arms } = mixedTrial('moments', { arms: 3, blocks: 3, pieces: 3, batchSd: 1, unbalanced: true })
const { cross, u, groups } = productsOf({ rows, model: { arms, fixed: ['level'], random: ['batch', 'block'] } })
const ratios = [0.8, 0.3]

test.each([[cross.p], [2]])('with %i columns the moments are those of the whole projection', (p) => {
  const x = u.map((row) => row.slice(0, p))
  const y = u.map((row) => [row[cross.p]!])
  const v = spdInverse(denseV(groups, ratios)).inverse
  const { inverse, logDet } = spdInverse(matrixProduct(transposed(x), v, x))
  const projected = matrixProduct(v, x, inverse, transposed(x), v)
  const projection = v.map((row, i) => row.map((value, j) => value - projected[i]![j]!))
  const py = matrixProduct(projection, y)

  const got = projectedMoments(weightedProducts(cross, ratios), p)
  expect(got.inverse).toEqual(near(inverse, 11))
  expect(got.logDetX).toBeCloseTo(logDet, 10)
  expect(got.coefficients).toEqual(near([matrixProduct(inverse, transposed(x), v, y).flat()], 10)[0])
  expect(got.residual).toBeCloseTo(matrixProduct(transposed(y), py)[0]![0]!, 8)
  groups.forEach((g, k) => {
    expect(got.first[k]).toBeCloseTo(matrixProduct(transposed(py), g, py)[0]![0]!, 8)
    expect(got.traces[k]).toBeCloseTo(traceOfProduct(projection, g), 9)
    groups.forEach((other, l) => {
      expect(got.second[k]![l]).toBeCloseTo(matrixProduct(transposed(py), g, projection, other, py)[0]![0]!, 8)
      expect(got.doubleTraces[k]![l]).toBeCloseTo(
        traceOfProduct(matrixProduct(projection, g), matrixProduct(projection, other)),
        9,
      )
    })
  })
})

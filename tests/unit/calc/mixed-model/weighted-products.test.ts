import { expect, test } from 'vitest'
import { matrixProduct } from '@/lib/calc/mixed-model/matrix-product'
import { spdInverse } from '@/lib/calc/mixed-model/spd-inverse'
import { traceOfProduct } from '@/lib/calc/mixed-model/trace-of-product'
import { weightedProducts } from '@/lib/calc/mixed-model/weighted-products'
import { denseV, mixedTrial, near, productsOf, transposed } from '@/tests/support/mixed-trials'

const shape = { arms: 3, blocks: 4, pieces: 3, batchSd: 1, unbalanced: true }

test.each<[string, string[], number[]]>([
  ['one factor', ['batch'], [0.7]],
  ['one factor at zero', ['batch'], [0]],
  ['nested', ['batch', 'block'], [0.7, 2.5]],
  ['nested, the inner at zero', ['batch', 'block'], [0, 2.5]],
  ['nested, the outer at zero', ['batch', 'block'], [0.4, 0]],
  ['crossed', ['block', 'level'], [1.3, 0.6]],
  ['crossed, large', ['block', 'level'], [1300, 600]],
])('%s: the products from the levels are those of the whole matrices', (_, random, ratios) => {
  const { rows, arms } = mixedTrial('products', shape)
  const { cross, u, groups } = productsOf({ rows, model: { arms, random } })
  const { inverse, logDet } = spdInverse(denseV(groups, ratios))
  const got = weightedProducts(cross, ratios)
  const ut = transposed(u)
  expect(got.logDet).toBeCloseTo(logDet, 10)
  expect(got.whole).toEqual(near(matrixProduct(ut, inverse, u), 9))
  groups.forEach((g, k) => {
    const vg = matrixProduct(inverse, g)
    expect(got.first[k]).toEqual(near(matrixProduct(ut, vg, inverse, u), 9))
    expect(got.traces[k]).toBeCloseTo(
      vg.reduce((sum, row, i) => sum + row[i]!, 0),
      9,
    )
    groups.forEach((other, l) => {
      const vgvh = matrixProduct(vg, inverse, other)
      const both = matrixProduct(ut, vgvh, inverse, u)
      const even = both.map((row, i) => row.map((value, j) => (value + both[j]![i]!) / 2))
      expect(got.second[k]![l]).toEqual(near(even, 9))
      expect(got.doubleTraces[k]![l]).toBeCloseTo(traceOfProduct(vg, matrixProduct(inverse, other)), 8)
    })
  })
})

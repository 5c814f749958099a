import { expect, test } from 'vitest'
import { kenwardRogerCovariance } from '@/lib/calc/mixed-model/kenward-roger-covariance'
import { matrixProduct } from '@/lib/calc/mixed-model/matrix-product'
import { projectedMoments } from '@/lib/calc/mixed-model/projected-moments'
import { spdInverse } from '@/lib/calc/mixed-model/spd-inverse'
import { traceOfProduct } from '@/lib/calc/mixed-model/trace-of-product'
import { weightedProducts } from '@/lib/calc/mixed-model/weighted-products'
import { withResidual } from '@/lib/calc/mixed-model/with-residual'
import { denseV, mixedTrial, near, productsOf, transposed } from '@/tests/support/mixed-trials'

test.each([[['batch', 'block']], [['block', 'level']]])(
  '%j: the adjusted covariance is that of the whole matrices',
  (random) => {
    const { rows, arms } = mixedTrial('kenward roger', { arms: 3, blocks: 4, pieces: 4, batchSd: 1, unbalanced: true })
    const { cross, u, groups } = productsOf({ rows, model: { arms, covariates: ['doughTempC'], random } })
    const ratios = [0.6, 0.9]
    const products = withResidual(weightedProducts(cross, ratios), ratios, cross.n)
    const got = kenwardRogerCovariance(products, projectedMoments(products))

    const x = u.map((row) => row.slice(0, cross.p))
    const v = spdInverse(denseV(groups, ratios)).inverse
    const all = [...groups, v.map((row, i) => row.map((_, j) => (i === j ? 1 : 0)))]
    const phi = spdInverse(matrixProduct(transposed(x), v, x)).inverse
    const p = all.map((g) => matrixProduct(transposed(x), v, g, v, x).map((row) => row.map((value) => -value)))
    const q = all.map((g) => all.map((h) => matrixProduct(transposed(x), v, g, v, h, v, x)))
    const information = all.map((g, i) =>
      all.map(
        (h, j) =>
          0.5 *
          (traceOfProduct(matrixProduct(v, g), matrixProduct(v, h)) -
            2 * traceOfProduct(phi, q[i]![j]!) +
            traceOfProduct(matrixProduct(phi, p[i]!), matrixProduct(phi, p[j]!))),
      ),
    )
    const w = spdInverse(information).inverse
    const adjusted = phi.map((row) => [...row])
    w.forEach((row, i) =>
      row.forEach((weight, j) => {
        const left = matrixProduct(p[i]!, phi, p[j]!)
        const inner = q[i]![j]!.map((own, a) => own.map((value, b) => value - left[a]![b]!))
        matrixProduct(phi, inner, phi).forEach((own, a) =>
          own.forEach((value, b) => (adjusted[a]![b]! += 2 * weight * value)),
        )
      }),
    )
    expect(got.covariance).toEqual(near(phi, 10))
    expect(got.varianceCovariance).toEqual(near(w, 8))
    expect(got.adjusted).toEqual(near(adjusted, 9))
    all.forEach((_, i) =>
      expect(got.slopes[i]).toEqual(
        near(
          matrixProduct(phi, p[i]!, phi).map((row) => row.map((value) => -value)),
          9,
        ),
      ),
    )
  },
)

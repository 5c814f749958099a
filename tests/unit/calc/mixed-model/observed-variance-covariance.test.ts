import { expect, test } from 'vitest'
import { minimiseReml } from '@/lib/calc/mixed-model/minimise-reml'
import { observedVarianceCovariance } from '@/lib/calc/mixed-model/observed-variance-covariance'
import { projectedMoments } from '@/lib/calc/mixed-model/projected-moments'
import { spdInverse } from '@/lib/calc/mixed-model/spd-inverse'
import { weightedProducts } from '@/lib/calc/mixed-model/weighted-products'
import { withResidual } from '@/lib/calc/mixed-model/with-residual'
import { mixedTrial, productsOf } from '@/tests/support/mixed-trials'

test('is twice the inverse of the second differences of −2 log likelihood in the variances themselves', () => {
  const { rows, arms } = mixedTrial('observed', {
    arms: 3,
    blocks: 6,
    pieces: 3,
    batchSd: 1,
    blockSd: 1,
    unbalanced: true,
  })
  const { cross } = productsOf({ rows, model: { arms, random: ['batch', 'block'] } })
  const { ratios, criterion } = minimiseReml(cross)
  const df = cross.n - cross.p
  const residual = criterion.moments.residual / df
  // without profiling, the variances as multiples of the estimated residual variance
  const value = (multiples: number[]) => {
    const last = multiples.at(-1)!
    const products = weightedProducts(
      cross,
      multiples.slice(0, -1).map((own) => own / last),
    )
    const moments = projectedMoments(products)
    return products.logDet + moments.logDetX + df * Math.log(last) + moments.residual / (last * residual)
  }
  const at = [...ratios, 1]
  const h = 1e-3
  const moved = (k: number, a: number, l: number, b: number) =>
    value(at.map((own, i) => own + (i === k ? a : 0) + (i === l ? b : 0)))
  const hessian = at.map((_, k) =>
    at.map(
      (__, l) => (moved(k, h, l, h) - moved(k, h, l, -h) - moved(k, -h, l, h) + moved(k, -h, l, -h)) / (4 * h * h),
    ),
  )
  const expected = spdInverse(hessian).inverse.map((row) => row.map((own) => 2 * own))
  const got = observedVarianceCovariance(
    projectedMoments(withResidual(weightedProducts(cross, ratios), ratios, cross.n)),
    residual,
  )
  got.forEach((row, k) => row.forEach((own, l) => expect(Math.abs(own / expected[k]![l]! - 1)).toBeLessThan(1e-3)))
})

import { matrixProduct } from './matrix-product'
import { spdInverse } from './spd-inverse'
import type { Matrix, ProjectedMoments, WeightedProducts } from './types'

export type KenwardRoger = {
  /** Φ = (XᵀV⁻¹X)⁻¹, and ΦXᵀV⁻¹GₖV⁻¹XΦ for each variance; all over σ². */
  covariance: Matrix
  slopes: number[][][]
  /** Φ_A: adjusted for having estimated the variances. */
  adjusted: number[][]
  /** Inverse of the expected information of the variances over σ². */
  varianceCovariance: number[][]
}

/**
 * Covariance of the fixed effects adjusted for small samples: Φ_A = Φ + 2Φ{ΣΣ Wᵢⱼ (Qᵢⱼ − PᵢΦPⱼ)}Φ, with W from the
 * expected information. All over σ².
 * @param products and @param moments with the residual last, at the estimated ratios
 * @throws CalcError 'not-possible' with reason 'not-definite'
 * Source: Kenward & Roger (1997), Biometrics 53, section 3; no curvature term, variances entering linearly.
 */
export function kenwardRogerCovariance(products: WeightedProducts, moments: ProjectedMoments): KenwardRoger {
  const fixed = (matrix: number[][]) => matrix.slice(0, products.p).map((row) => row.slice(0, products.p))
  const covariance = moments.inverse
  const first = products.first.map(fixed)
  const varianceCovariance = spdInverse(moments.doubleTraces.map((row) => row.map((value) => value / 2))).inverse
  const inner = covariance.map((row) => row.map(() => 0))
  varianceCovariance.forEach((row, i) =>
    row.forEach((weight, j) => {
      const both = matrixProduct(first[i]!, covariance, first[j]!)
      inner.forEach((target, a) =>
        target.forEach((_, b) => (target[b]! += weight * (products.second[i]![j]![a]![b]! - both[a]![b]!))),
      )
    }),
  )
  const added = matrixProduct(covariance, inner, covariance)
  return {
    covariance,
    slopes: first.map((matrix) => matrixProduct(covariance, matrix, covariance)),
    adjusted: covariance.map((row, a) => row.map((value, b) => value + added[a]![b]! + added[b]![a]!)),
    varianceCovariance,
  }
}

import { projectedMoments } from './projected-moments'
import type { CrossProducts, ProjectedMoments } from './types'
import { weightedProducts } from './weighted-products'

export type RemlCriterion = {
  value: number
  gradient: number[]
  hessian: number[][]
  /** Expected Hessian, never indefinite. */
  expected: number[][]
  moments: ProjectedMoments
}

/**
 * −2 log restricted likelihood, constants included, with fixed effects and residual variance profiled out, as a function
 * of the variance ratios θₖ = σₖ² / σ², with gradient and Hessian:
 * log|V| + log|XᵀV⁻¹X| + (n − p)(1 + log(2π yᵀPy / (n − p))).
 * @param cross from crossProducts, n > p; @param ratios θ ≥ 0, one for each of its names
 * Source: Bates, Mächler, Bolker & Walker (2015), J. Stat. Softw. 67(1), eq. 42; derivatives after Searle, Casella &
 * McCulloch (1992), section 6.6.
 */
export function remlCriterion(cross: CrossProducts, ratios: readonly number[]): RemlCriterion {
  const products = weightedProducts(cross, ratios)
  const moments = projectedMoments(products)
  const df = cross.n - cross.p
  const { residual, first, second, traces, doubleTraces } = moments
  const share = first.map((value) => value / residual)
  return {
    value: products.logDet + moments.logDetX + df * (1 + Math.log((2 * Math.PI * residual) / df)),
    gradient: traces.map((trace, k) => trace - df * share[k]!),
    hessian: doubleTraces.map((row, k) =>
      row.map((trace, l) => df * ((2 * second[k]![l]!) / residual - share[k]! * share[l]!) - trace),
    ),
    expected: doubleTraces.map((row, k) => row.map((trace, l) => trace - (traces[k]! * traces[l]!) / df)),
    moments,
  }
}

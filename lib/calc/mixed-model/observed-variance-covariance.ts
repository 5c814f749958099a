import { spdInverse } from './spd-inverse'
import type { ProjectedMoments } from './types'

/**
 * Covariance of the estimated variances over σ², from the observed information of −2 log restricted likelihood:
 * 2 H⁻¹ with H = 2 yᵀPGPGPy / σ² − tr PGPG.
 * @param moments with the residual last; @param residualVariance σ² > 0
 * @throws CalcError 'not-possible' with reason 'not-definite'
 * Source: Searle, Casella & McCulloch (1992), Variance Components, section 6.6.
 */
export function observedVarianceCovariance(moments: ProjectedMoments, residualVariance: number): number[][] {
  const { second, doubleTraces } = moments
  const hessian = doubleTraces.map((row, k) => row.map((trace, l) => (2 * second[k]![l]!) / residualVariance - trace))
  return spdInverse(hessian).inverse.map((row) => row.map((value) => 2 * value))
}

import { quadraticForm } from './quadratic-form'
import type { Matrix } from './types'

/**
 * Satterthwaite's degrees of freedom of one contrast: 2 v² / (gᵀAg), v its variance, g the slope of v in each variance.
 * @param weights of the contrast, not all 0; @param covariance (XᵀV⁻¹X)⁻¹
 * @param first XᵀV⁻¹GₖV⁻¹X for each variance; @param varianceCovariance A, of the estimated variances over σ²
 * @returns > 0
 * Source: Giesbrecht & Burns (1985), Biometrics 41; Kuznetsova, Brockhoff & Christensen (2017), J. Stat. Softw. 82(13).
 */
export function satterthwaiteDf(q: {
  weights: readonly number[]
  covariance: Matrix
  first: readonly Matrix[]
  varianceCovariance: Matrix
}): number {
  const turned = q.covariance.map((row) => row.reduce((sum, value, j) => sum + value * q.weights[j]!, 0))
  const variance = turned.reduce((sum, value, j) => sum + value * q.weights[j]!, 0)
  const slope = q.first.map((matrix) => quadraticForm(turned, matrix, turned))
  return (2 * variance * variance) / quadraticForm(slope, q.varianceCovariance, slope)
}

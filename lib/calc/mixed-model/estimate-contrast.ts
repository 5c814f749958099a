import { tTail } from '../distributions/t-tail'
import type { KenwardRoger } from './kenward-roger-covariance'
import { kenwardRogerTest } from './kenward-roger-test'
import { quadraticForm } from './quadratic-form'
import { satterthwaiteDf } from './satterthwaite-df'
import type { Matrix } from './types'

/** How sure an estimate is by one of the two approximations; p two-sided, unadjusted. */
export type Inference = { se: number; df: number; t: number; p: number }

export type Estimate = {
  estimate: number
  /** From the estimated variances as if they were known. */
  se: number
  /** Null where a variance is at zero: the degrees of freedom would be borrowed from pieces. */
  satterthwaite: Inference | null
  /** With the adjusted standard error; null at zero, and where the moments have no t distribution. */
  kenwardRoger: Inference | null
}

/** The two approximations at the estimated variances. */
export type SmallSample = { kenwardRoger: KenwardRoger; first: readonly Matrix[]; observed: Matrix }

/**
 * Estimate of a contrast of the fixed effects, with both approximations where there are any.
 * @param weights on the coefficients, not all 0; @param covariance (XᵀV⁻¹X)⁻¹; @param residualVariance σ² > 0
 * @param smallSample null where a variance is at zero
 * Source: Giesbrecht & Burns (1985), Biometrics 41; Kenward & Roger (1997), Biometrics 53.
 */
export function estimateContrast(q: {
  weights: readonly number[]
  coefficients: readonly number[]
  covariance: Matrix
  residualVariance: number
  smallSample: SmallSample | null
}): Estimate {
  const estimate = q.weights.reduce((sum, value, j) => sum + value * q.coefficients[j]!, 0)
  const seOf = (covariance: Matrix) => Math.sqrt(q.residualVariance * quadraticForm(q.weights, covariance, q.weights))
  const infer = (se: number, df: number): Inference => {
    const t = estimate / se
    return { se, df, t, p: Math.min(1, 2 * tTail({ t: Math.abs(t), df, tail: 'upper' })) }
  }
  const se = seOf(q.covariance)
  if (q.smallSample === null) return { estimate, se, satterthwaite: null, kenwardRoger: null }
  const { kenwardRoger, first, observed } = q.smallSample
  const adjusted = kenwardRogerTest({
    weights: [q.weights],
    coefficients: q.coefficients,
    kenwardRoger,
    residualVariance: q.residualVariance,
  })
  return {
    estimate,
    se,
    satterthwaite: infer(
      se,
      satterthwaiteDf({ weights: q.weights, covariance: q.covariance, first, varianceCovariance: observed }),
    ),
    kenwardRoger: adjusted && infer(seOf(kenwardRoger.adjusted), adjusted.df2),
  }
}

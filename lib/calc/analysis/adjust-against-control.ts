import { mustBeWithin, mustHaveAtLeast, mustMatchLength } from '../checks'
import { dunnettQuantile } from '../distributions/dunnett-quantile'
import { dunnettTail } from '../distributions/dunnett-tail'
import { multivariateTQuantile } from '../distributions/multivariate-t-quantile'
import { multivariateTTail } from '../distributions/multivariate-t-tail'
import { productLoadings } from './product-loadings'

/** `greater` and `less` test arm > control and arm < control, each with one limit. */
export type Alternative = 'two-sided' | 'greater' | 'less'

export type Comparison = {
  arm: string
  /** Arm minus control. */
  estimate: number
  se: number
  df: number
  t: number
  pAdjusted: number
  /** Simultaneous limits; null where the alternative leaves the side open. */
  low: number | null
  high: number | null
}

export type Comparisons = {
  /** `dunnett-product`: exact; `dunnett-lattice`: the model's own correlation, p within about 1e-4. */
  method: 'student-t' | 'dunnett-product' | 'dunnett-lattice'
  alternative: Alternative
  confidence: number
  df: number
  criticalValue: number
  comparisons: Comparison[]
}

/**
 * Dunnett's single-step adjustment of several arms against one control: p-values and simultaneous intervals.
 * @param differences arm minus control with standard error > 0, one or more, all from one residual variance
 * @param correlation of the differences, k × k; @param df of the residual variance, 0.5 to 1e6
 * @param confidence joint, 0.5 to 0.9999
 * @throws CalcError 'empty' | 'wrong-shape' | 'not-finite' | 'out-of-range'
 * Source: Dunnett (1955), JASA 50, with the correlation of the fitted model (Hothorn, Bretz & Westfall 2008).
 */
export function adjustAgainstControl(q: {
  differences: readonly { arm: string; estimate: number; se: number }[]
  correlation: readonly (readonly number[])[]
  df: number
  confidence: number
  alternative: Alternative
}): Comparisons {
  mustHaveAtLeast('differences', q.differences, 1)
  mustMatchLength('correlation', q.correlation, q.differences.length)
  mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  const sides = q.alternative === 'two-sided' ? 'two' : 'one'
  const loadings = productLoadings(q.correlation)
  const common = { df: q.df, sides } as const
  const upper = (c: number) =>
    loadings
      ? dunnettTail({ ...common, c, loadings }).upper
      : multivariateTTail({ ...common, c, correlation: q.correlation }).upper
  const p = 1 - q.confidence
  const criticalValue = loadings
    ? dunnettQuantile({ ...common, p, loadings })
    : multivariateTQuantile({ ...common, p, correlation: q.correlation })

  const comparisons = q.differences.map(({ arm, estimate, se }, i): Comparison => {
    mustBeWithin(`differences[${i}].estimate`, estimate)
    mustBeWithin(`differences[${i}].se`, se, { over: 0 })
    const t = estimate / se
    const extreme = q.alternative === 'two-sided' ? Math.abs(t) : q.alternative === 'greater' ? t : -t
    return {
      arm,
      estimate,
      se,
      df: q.df,
      t,
      pAdjusted: upper(extreme),
      low: q.alternative === 'less' ? null : estimate - criticalValue * se,
      high: q.alternative === 'greater' ? null : estimate + criticalValue * se,
    }
  })
  const method = q.differences.length === 1 ? 'student-t' : loadings ? 'dunnett-product' : 'dunnett-lattice'
  return { method, alternative: q.alternative, confidence: q.confidence, df: q.df, criticalValue, comparisons }
}

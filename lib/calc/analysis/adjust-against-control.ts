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
  /** Its own; its p-value and limits go by the smallest of all. */
  df: number
  t: number
  pAdjusted: number
  /** Simultaneous limits; null where the alternative leaves the side open. */
  low: number | null
  high: number | null
}

export type Comparisons = {
  /** `dunnett-product`: exact quadrature; `dunnett-lattice`: a lattice rule for the model's own correlation. */
  method: 'student-t' | 'dunnett-product' | 'dunnett-lattice'
  alternative: Alternative
  confidence: number
  /** The smallest of the contrasts. */
  df: number
  criticalValue: number
  /** Largest error estimate of the adjusted p-values and of the joint level, absolute: below 1e-4 by the lattice. */
  probabilityError: number
  comparisons: Comparison[]
}

/** Stated accuracy of the exact quadrature, absolute. */
const EXACT = 1e-10

/**
 * Dunnett's single-step adjustment of several arms against one control: p-values and simultaneous intervals.
 * With a correlation that is a product, as in complete blocks, by exact quadrature; with any other by a lattice rule.
 * @param differences arm minus control with standard error > 0, one or more (up to 12 where no product)
 * @param correlation of the differences, k × k; @param df of the residual variance, or of each contrast in turn, of
 *   which the smallest holds for all: 0.5 to 1e6
 * @param confidence joint, 0.5 to 0.9999
 * @throws CalcError 'empty' | 'wrong-shape' | 'not-finite' | 'out-of-range'; 'not-possible' with reason 'not-definite'
 * Source: Dunnett (1955), JASA 50, with the correlation of the fitted model (Hothorn, Bretz & Westfall 2008).
 */
export function adjustAgainstControl(q: {
  differences: readonly { arm: string; estimate: number; se: number }[]
  correlation: readonly (readonly number[])[]
  df: number | readonly number[]
  confidence: number
  alternative: Alternative
}): Comparisons {
  mustHaveAtLeast('differences', q.differences, 1)
  mustMatchLength('correlation', q.correlation, q.differences.length)
  mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  const sides = q.alternative === 'two-sided' ? 'two' : 'one'
  const given = q.df
  const dfs = typeof given === 'number' ? q.differences.map(() => given) : given
  mustMatchLength('df', dfs, q.differences.length)
  dfs.forEach((each, i) => mustBeWithin(typeof given === 'number' ? 'df' : `df[${i}]`, each, { min: 0.5, max: 1e6 }))
  const df = Math.min(...dfs)
  const loadings = productLoadings(q.correlation)
  const common = { df, sides } as const
  const upper = (c: number) =>
    loadings
      ? { ...dunnettTail({ ...common, c, loadings }), errorEstimate: EXACT }
      : multivariateTTail({ ...common, c, correlation: q.correlation })
  const p = 1 - q.confidence
  const critical = loadings
    ? { c: dunnettQuantile({ ...common, p, loadings }), errorEstimate: EXACT }
    : multivariateTQuantile({ ...common, p, correlation: q.correlation })
  const criticalValue = critical.c

  let probabilityError = critical.errorEstimate
  const comparisons = q.differences.map(({ arm, estimate, se }, i): Comparison => {
    mustBeWithin(`differences[${i}].estimate`, estimate)
    mustBeWithin(`differences[${i}].se`, se, { over: 0 })
    const t = estimate / se
    const extreme = q.alternative === 'two-sided' ? Math.abs(t) : q.alternative === 'greater' ? t : -t
    const tail = upper(extreme)
    probabilityError = Math.max(probabilityError, tail.errorEstimate)
    return {
      arm,
      estimate,
      se,
      df: dfs[i]!,
      t,
      pAdjusted: tail.upper,
      low: q.alternative === 'less' ? null : estimate - criticalValue * se,
      high: q.alternative === 'greater' ? null : estimate + criticalValue * se,
    }
  })
  const method = q.differences.length === 1 ? 'student-t' : loadings ? 'dunnett-product' : 'dunnett-lattice'
  return {
    method,
    alternative: q.alternative,
    confidence: q.confidence,
    df,
    criticalValue,
    probabilityError,
    comparisons,
  }
}

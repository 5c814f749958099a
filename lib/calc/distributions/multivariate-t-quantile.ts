import { mustBeWithin } from '../checks'
import { bracketedRoot } from './bracketed-root'
import type { Sides } from './dunnett-tail'
import { multivariateTLattice } from './multivariate-t-lattice'
import { sumToWantedError } from './multivariate-t-tail'
import { tQuantile } from './t-quantile'

export type MultivariateTQuantile = {
  c: number
  /** Of the probability at c, absolute, as in multivariateTTail; below 1e-4. */
  errorEstimate: number
  method: 'shifted-richtmyer-lattice'
}

/**
 * The critical value c at which multivariateTTail's `upper` equals p.
 * @param p 0.0001 ≤ p ≤ 0.5; the rest as in multivariateTTail
 * @returns c, about 1e-3 absolute or better for p ≥ 0.01, never above the Bonferroni value, and the error of its p
 * @throws CalcError as multivariateTTail
 * Source: inversion between the unadjusted and the Bonferroni t quantile.
 * @example multivariateTQuantile({ p: 0.05, df: 9, correlation: [[1, 0.5], [0.5, 1]], sides: 'two' }).c // 2.61
 */
export function multivariateTQuantile(q: {
  p: number
  df: number
  correlation: readonly (readonly number[])[]
  sides: Sides
}): MultivariateTQuantile {
  const p = mustBeWithin('p', q.p, { min: 0.0001 - 1e-12, max: 0.5 })
  const lattice = multivariateTLattice(q)
  const share = q.sides === 'two' ? 2 : 1
  const low = tQuantile({ p: p / share, df: q.df, tail: 'upper' })
  const high = tQuantile({ p: p / share / q.correlation.length, df: q.df, tail: 'upper' })
  // one number of points for the whole search, so that the sum is smooth in c; the error is largest at the low end
  const { points, upper } = sumToWantedError(lattice, low)
  const f = (c: number) => Math.log(lattice(c, points).upper) - Math.log(p)
  const c = upper <= p ? low : bracketedRoot({ f, low, high: high * (1 + 1e-9), tolerance: 1e-5 })
  return { c, errorEstimate: lattice(c, points).errorEstimate, method: 'shifted-richtmyer-lattice' }
}

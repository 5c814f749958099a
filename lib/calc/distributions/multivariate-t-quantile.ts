import { mustBeWithin } from '../checks'
import { bracketedRoot } from './bracketed-root'
import type { Sides } from './dunnett-tail'
import { multivariateTTail } from './multivariate-t-tail'
import { tQuantile } from './t-quantile'

/**
 * The critical value c at which multivariateTTail's `upper` equals p.
 * @param p 0.0001 ≤ p ≤ 0.5; the rest as in multivariateTTail
 * @returns about 1e-3 absolute or better for p ≥ 0.01, never above the Bonferroni value
 * @throws CalcError as multivariateTTail
 * Source: inversion between the unadjusted and the Bonferroni t quantile.
 */
export function multivariateTQuantile(q: {
  p: number
  df: number
  correlation: readonly (readonly number[])[]
  sides: Sides
}): number {
  const p = mustBeWithin('p', q.p, { min: 0.0001 - 1e-12, max: 0.5 })
  const share = q.sides === 'two' ? 2 : 1
  const low = tQuantile({ p: p / share, df: q.df, tail: 'upper' })
  const high = tQuantile({ p: p / share / q.correlation.length, df: q.df, tail: 'upper' })
  const f = (c: number) => Math.log(multivariateTTail({ ...q, c }).upper) - Math.log(p)
  // the lattice's own error may hide a difference that is smaller than it
  if (f(low) <= 0) return low
  return bracketedRoot({ f, low, high: high * (1 + 1e-9), tolerance: 1e-6 })
}

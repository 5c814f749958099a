import { mustBeWithin } from '../checks'
import { bracketedRoot } from './bracketed-root'
import { type Sides, dunnettTail } from './dunnett-tail'
import { tQuantile } from './t-quantile'

/**
 * The critical value c at which dunnettTail's `upper` equals p.
 * @param p 0 < p ≤ 0.5; @param df, loadings, sides as in dunnettTail
 * @returns about 1e-9 relative
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty' | 'no-convergence'
 * Source: inversion between the unadjusted and the Bonferroni t quantile, which enclose it.
 * @example dunnettQuantile({ p: 0.05, df: 10, loadings: [0.7071067811865476, 0.7071067811865476], sides: 'two' }) // 2.5683
 */
export function dunnettQuantile(q: { p: number; df: number; loadings: readonly number[]; sides: Sides }): number {
  const p = mustBeWithin('p', q.p, { over: 0, max: 0.5 })
  const share = q.sides === 'two' ? 2 : 1
  const low = tQuantile({ p: p / share, df: q.df, tail: 'upper' })
  if (q.loadings.length === 1) return low
  const high = tQuantile({ p: p / share / q.loadings.length, df: q.df, tail: 'upper' })
  const f = (c: number) => Math.log(dunnettTail({ ...q, c }).upper) - Math.log(p)
  return bracketedRoot({ f, low, high: high * (1 + 1e-9), tolerance: 1e-10 })
}

import { mustBeWithin } from '../checks'
import { chiMixture } from './chi-mixture'
import { type Tail, normalUpper } from './normal-tail'

/**
 * Noncentral t, (Z + δ) / √(χ²_ν / ν): probability of one tail, integrated as such, so that a small one keeps its digits.
 * @param t finite, −1e6 to 1e6; @param df ν, 0.5 ≤ df ≤ 1e6, need not be whole
 * @param noncentrality δ, −1000 to 1000: the true difference in its standard errors
 * @returns 0 to 1, about 1e-12 relative for df ≤ 1e4 (1e-10 at 1e6); 0 below the smallest double
 * @throws CalcError 'not-finite' | 'out-of-range' | 'no-convergence'
 * Source: P(T ≤ t) = E Φ(t s − δ) over s = χ_ν / √ν, Johnson, Kotz & Balakrishnan (1995), Continuous Univariate
 * Distributions 2, chapter 31; summed as in chiMixture.
 * @example noncentralTTail({ t: 2.101, df: 18, noncentrality: 2, tail: 'upper' }) // 0.4733
 */
export function noncentralTTail(q: { t: number; df: number; noncentrality: number; tail: Tail }): number {
  const t = mustBeWithin('t', q.t, { min: -1e6, max: 1e6 })
  const shift = mustBeWithin('noncentrality', q.noncentrality, { min: -1000, max: 1000 })
  const atScale = (s: number) => ({ lower: normalUpper(shift - t * s), upper: normalUpper(t * s - shift) })
  return chiMixture({ atScale, df: q.df, noncentrality: Math.abs(shift) })[q.tail]
}

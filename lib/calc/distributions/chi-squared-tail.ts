import { mustBeWithin } from '../checks'
import type { Tail } from './normal-tail'
import { regularisedGamma } from './regularised-gamma'

/**
 * Chi-squared: probability of one tail, computed as such.
 * @param x ≥ 0; @param df 0.01 ≤ df ≤ 1e8
 * @returns 0 to 1, about 1e-13 relative for df ≤ 1e4
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: P(df/2, x/2), Abramowitz & Stegun 26.4.19.
 * @example chiSquaredTail({ x: 2, df: 2, tail: 'upper' }) // e⁻¹
 */
export function chiSquaredTail(q: { x: number; df: number; tail: Tail }): number {
  const x = mustBeWithin('x', q.x, { min: 0 })
  const df = mustBeWithin('df', q.df, { min: 0.01, max: 1e8 })
  return regularisedGamma({ a: df / 2, x: x / 2 })[q.tail]
}

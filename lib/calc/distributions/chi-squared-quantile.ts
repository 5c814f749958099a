import { mustBeWithin } from '../checks'
import { chiSquaredTail } from './chi-squared-tail'
import type { Tail } from './normal-tail'
import { positiveQuantile } from './positive-quantile'

/**
 * The x whose chi-squared tail probability is p.
 * @param p 0 < p < 1; @param df 0.1 ≤ df ≤ 1e8
 * @returns about 1e-13 relative
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: inversion of chiSquaredTail.
 * @example chiSquaredQuantile({ p: 0.05, df: 5, tail: 'upper' }) // 11.0704976935
 */
export function chiSquaredQuantile(q: { p: number; df: number; tail: Tail }): number {
  const df = mustBeWithin('df', q.df, { min: 0.1, max: 1e8 })
  return positiveQuantile({ tail: (x) => chiSquaredTail({ x, df, tail: q.tail }), p: q.p, start: df })
}

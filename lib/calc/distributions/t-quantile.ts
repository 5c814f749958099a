import { mustBeWithin } from '../checks'
import type { Tail } from './normal-tail'
import { positiveQuantile } from './positive-quantile'
import { tTail } from './t-tail'

/**
 * The t whose tail probability is p.
 * @param p 0 < p < 1; @param df 0.1 ≤ df ≤ 1e8
 * @returns about 1e-13 relative, less near p = 0.5 (1e-15 absolute)
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: inversion of tTail.
 * @example tQuantile({ p: 0.975, df: 10, tail: 'lower' }) // 2.2281388519649
 */
export function tQuantile(q: { p: number; df: number; tail: Tail }): number {
  const p = mustBeWithin('p', q.p, { over: 0, under: 1 })
  const df = mustBeWithin('df', q.df, { min: 0.1, max: 1e8 })
  if (p === 0.5) return 0
  const sign = p < 0.5 === (q.tail === 'upper') ? 1 : -1
  const near = Math.min(p, 1 - p)
  return sign * positiveQuantile({ tail: (t) => tTail({ t, df, tail: 'upper' }), p: near, start: 1 })
}

import { mustBeWithin } from '../checks'
import { fTail } from './f-tail'
import type { Tail } from './normal-tail'
import { positiveQuantile } from './positive-quantile'

/**
 * The F value whose tail probability is p.
 * @param p 0 < p < 1; @param df1 numerator, 0.1 to 1e8; @param df2 denominator, 0.1 to 1e8
 * @returns about 1e-13 relative
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: inversion of fTail.
 * @example fQuantile({ p: 0.05, df1: 1, df2: 10, tail: 'upper' }) // 4.9646027437
 */
export function fQuantile(q: { p: number; df1: number; df2: number; tail: Tail }): number {
  const df1 = mustBeWithin('df1', q.df1, { min: 0.1, max: 1e8 })
  const df2 = mustBeWithin('df2', q.df2, { min: 0.1, max: 1e8 })
  return positiveQuantile({ tail: (f) => fTail({ f, df1, df2, tail: q.tail }), p: q.p, start: 1 })
}

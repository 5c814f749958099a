import { mustBeWithin } from '../checks'
import { positiveQuantile } from './positive-quantile'
import { studentizedRangeTail } from './studentized-range-tail'

/**
 * The studentized range whose upper tail probability is p.
 * @param p 0 < p < 1; @param groups 2 to 100; @param df 0.5 ≤ df ≤ 1e6
 * @returns about 1e-10 relative
 * @throws CalcError 'not-finite' | 'out-of-range' | 'no-convergence'
 * Source: inversion of studentizedRangeTail.
 * @example studentizedRangeQuantile({ p: 0.05, groups: 3, df: 10 }) // 3.8768
 */
export function studentizedRangeQuantile(q: { p: number; groups: number; df: number }): number {
  const { groups, df } = q
  const p = mustBeWithin('p', q.p, { over: 0, under: 1 })
  return positiveQuantile({ tail: (range) => studentizedRangeTail({ range, groups, df }).upper, p, start: 4 })
}

import { mustBeWithin } from '../checks'
import type { Tail } from './normal-tail'
import { regularisedBeta } from './regularised-beta'

/**
 * Student's t: probability of one tail, computed as such.
 * @param t finite; @param df 0.01 ≤ df ≤ 1e8, need not be whole
 * @returns 0 to 1, about 1e-13 relative for df ≤ 1e4
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: P(T > t) = ½ I_{ν/(ν+t²)}(ν/2, ½) for t ≥ 0, DLMF 8.17 and Abramowitz & Stegun 26.7.1.
 * @example tTail({ t: 1, df: 1, tail: 'upper' }) // 0.25
 */
export function tTail(q: { t: number; df: number; tail: Tail }): number {
  const t = mustBeWithin('t', q.t)
  const df = mustBeWithin('df', q.df, { min: 0.01, max: 1e8 })
  // in ratio form: t² may not be a finite number
  const ratio = (t / df) * t
  const half =
    0.5 *
    regularisedBeta({ x: 1 / (1 + ratio), y: ratio === Infinity ? 1 : ratio / (1 + ratio), a: df / 2, b: 0.5 }).lower
  return t > 0 === (q.tail === 'upper') ? half : 1 - half
}

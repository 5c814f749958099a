import { mustBeWithin } from '../checks'
import type { Tail } from './normal-tail'
import { regularisedBeta } from './regularised-beta'

/**
 * F distribution: probability of one tail, computed as such.
 * @param f ≥ 0; @param df1 numerator, 0.01 to 1e8; @param df2 denominator, 0.01 to 1e8
 * @returns 0 to 1, about 1e-13 relative for df ≤ 1e4
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: P(F > f) = I_{ν₂/(ν₂+ν₁f)}(ν₂/2, ν₁/2), Abramowitz & Stegun 26.6.2.
 * @example fTail({ f: 1, df1: 4, df2: 4, tail: 'upper' }) // 0.5
 */
export function fTail(q: { f: number; df1: number; df2: number; tail: Tail }): number {
  const f = mustBeWithin('f', q.f, { min: 0 })
  const df1 = mustBeWithin('df1', q.df1, { min: 0.01, max: 1e8 })
  const df2 = mustBeWithin('df2', q.df2, { min: 0.01, max: 1e8 })
  const ratio = (df1 / df2) * f
  const beta = regularisedBeta({
    x: 1 / (1 + ratio),
    y: ratio === Infinity ? 1 : ratio / (1 + ratio),
    a: df2 / 2,
    b: df1 / 2,
  })
  return q.tail === 'upper' ? beta.lower : beta.upper
}

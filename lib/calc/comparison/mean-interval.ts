import { mustBeWithin } from '../checks'
import { tQuantile } from '../distributions/t-quantile'

export type Interval = { se: number; df: number; low: number; high: number }

/**
 * Two-sided interval from Student's t: estimate ± t · se.
 * @param se ≥ 0; @param df 0.1 to 1e8; @param confidence 0.5 to 0.9999
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Student (1908), Biometrika 6.
 * @example meanInterval({ estimate: 10, se: 1, df: 10, confidence: 0.95 }) // 7.772 to 12.228
 */
export function meanInterval(q: { estimate: number; se: number; df: number; confidence: number }): Interval {
  const confidence = mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  const half = tQuantile({ p: (1 - confidence) / 2, df: q.df, tail: 'upper' }) * mustBeWithin('se', q.se, { min: 0 })
  return { se: q.se, df: q.df, low: q.estimate - half, high: q.estimate + half }
}

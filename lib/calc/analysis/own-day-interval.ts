import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { tQuantile } from '../distributions/t-quantile'

/** At or below this share of the largest difference a standard deviation is rounding, not variation. */
const LEAST_VARIATION = 1e-14

export type OwnDayInterval = {
  days: number
  mean: number
  /** Null on one day. */
  se: number | null
  df: number
  /** Null on one day, and where all days differ by the same: then nothing says how much they might. */
  low: number | null
  high: number | null
}

/**
 * The interval of an arm's difference from the control by its own mixing days alone, a paired t: each day with equal
 * weight, not adjusted for several arms. It holds whatever the other arms do.
 * @param differences arm-day mean minus the control's of the same day, one or more; @param confidence 0.5 to 0.9999
 * @param size of the values that were subtracted, against which variation is told from rounding; > 0
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: Student (1908), Biometrika 6.
 */
export function ownDayInterval(q: {
  differences: readonly number[]
  confidence: number
  size: number
}): OwnDayInterval {
  const days = mustHaveAtLeast('differences', q.differences, 1).length
  const confidence = mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  q.differences.forEach((value, i) => mustBeWithin(`differences[${i}]`, value))
  const df = days - 1
  const mean = q.differences.reduce((sum, value) => sum + value, 0) / days
  if (df === 0) return { days, mean, se: null, df, low: null, high: null }
  const sd = Math.sqrt(q.differences.reduce((sum, value) => sum + (value - mean) ** 2, 0) / df)
  const se = sd / Math.sqrt(days)
  if (sd <= LEAST_VARIATION * q.size) return { days, mean, se, df, low: null, high: null }
  const half = tQuantile({ p: (1 - confidence) / 2, df, tail: 'upper' }) * se
  return { days, mean, se, df, low: mean - half, high: mean + half }
}

import { mustBeWhole, mustBeWithin } from '../checks'
import { normalQuantile } from '../distributions/normal-quantile'
import { MOST_TASTERS } from './constants'

/**
 * Least significant difference of two rank sums, complete blocks: z √(n k (k + 1) / 6), z of α/2.
 * The 6 is a constant, not a count of degrees of freedom. Not adjusted for the number of pairs.
 * @param tasters n, whole, 2 to 10 000; @param samples k, whole, 2 to 50; @param alpha two-sided, 1e-6 ≤ α ≤ 0.5
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: ISO 8587, ranking.
 * @example leastRankDifference({ tasters: 8, samples: 5, alpha: 0.05 }) // 12.396
 */
export function leastRankDifference(q: { tasters: number; samples: number; alpha: number }): number {
  const n = mustBeWhole('tasters', q.tasters, { min: 2, max: MOST_TASTERS })
  const k = mustBeWhole('samples', q.samples, { min: 2, max: 50 })
  const alpha = mustBeWithin('alpha', q.alpha, { min: 1e-6, max: 0.5 })
  return normalQuantile({ p: alpha / 2, tail: 'upper' }) * Math.sqrt((n * k * (k + 1)) / 6)
}

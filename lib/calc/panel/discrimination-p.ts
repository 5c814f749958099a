import { mustBeWhole } from '../checks'
import { binomialTail } from '../distributions/binomial-tail'
import { CHANCE_SHARE, MOST_TASTERS } from './constants'
import type { DifferenceTest } from './types'

/**
 * Chance that as many or more right answers come by guessing: P(X ≥ correct), X binomial. The two-sided paired test
 * doubles the tail of the larger side, at most 1.
 * One answer a taster: repeated tastings by one person are not independent.
 * @param correct right answers, or those for one of the two samples (`paired-two-sided`), whole, 0 to tasters
 * @param tasters whole, 1 to 10 000
 * @returns p, 0 to 1, exact to about 1e-12 relative
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: exact binomial; ISO 4120 (triangle), ISO 10399 (duo-trio), ISO 5495 (paired comparison).
 * @example discriminationP({ test: 'triangle', tasters: 12, correct: 8 }) // 0.0188
 */
export function discriminationP(q: { test: DifferenceTest; tasters: number; correct: number }): number {
  const n = mustBeWhole('tasters', q.tasters, { min: 1, max: MOST_TASTERS })
  const correct = mustBeWhole('correct', q.correct, { min: 0, max: n })
  const share = CHANCE_SHARE[q.test]
  if (q.test !== 'paired-two-sided') return binomialTail({ k: correct, n, share, tail: 'upper' })
  return Math.min(1, 2 * binomialTail({ k: Math.max(correct, n - correct), n, share, tail: 'upper' }))
}

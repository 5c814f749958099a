import { mustBeWhole, mustBeWithin } from '../checks'
import { binomialTail } from '../distributions/binomial-tail'
import { CHANCE_SHARE, MOST_TASTERS } from './constants'
import type { KnownAnswerTest } from './types'

/**
 * Most right answers with which two samples still count as similar: the exact upper limit of the share who tell lies below
 * the margin. Null where even none right would be too many.
 * Counts below what guessing gives are returned as they are, though tables of the standards leave them out.
 * @param tasters whole, 1 to 10 000; @param marginShare 0 < m < 1; @param confidence one-sided, 0.5 ≤ c ≤ 0.9999
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: exact binomial, P(X ≤ k) ≤ 1 − confidence at the margin; ISO 5495, table A.3.
 * @example mostCorrect({ test: 'paired', tasters: 132, marginShare: 0.3, confidence: 0.95 }) // 76
 */
export function mostCorrect(q: {
  test: KnownAnswerTest
  tasters: number
  marginShare: number
  confidence: number
}): number | null {
  const n = mustBeWhole('tasters', q.tasters, { min: 1, max: MOST_TASTERS })
  const margin = mustBeWithin('marginShare', q.marginShare, { over: 0, under: 1 })
  const error = 1 - mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  const share = CHANCE_SHARE[q.test] + (1 - CHANCE_SHARE[q.test]) * margin
  let [few, many] = [-1, n]
  while (many - few > 1) {
    const middle = Math.floor((few + many) / 2)
    if (binomialTail({ k: middle, n, share, tail: 'lower' }) <= error) few = middle
    else many = middle
  }
  return few < 0 ? null : few
}

import { mustBeWithin } from '../checks'
import { type Discriminators, type LimitMethod, discriminators } from './discriminators'
import type { KnownAnswerTest } from './types'

export type Similarity = Omit<Discriminators, 'lowShare'> & { similar: boolean }

/**
 * Whether 'nobody can tell' may be said: the one-sided upper limit of the share who tell lies below a margin that was
 * declared before the tasting. That no difference was found says nothing of the kind.
 * @param marginShare share of tellers that would still be called similar, 0 < m < 1
 * @param confidence one-sided, 0.5 ≤ c ≤ 0.9999
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: ISO 4120, ISO 10399, ISO 5495 (testing for similarity).
 * @example similarity({ test: 'triangle', tasters: 60, correct: 20, marginShare: 0.3, confidence: 0.95, method: 'exact' }).similar // true
 */
export function similarity(q: {
  test: KnownAnswerTest
  tasters: number
  correct: number
  marginShare: number
  confidence: number
  method: LimitMethod
}): Similarity {
  const marginShare = mustBeWithin('marginShare', q.marginShare, { over: 0, under: 1 })
  const tailShare = 1 - mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  const { lowShare: _, ...found } = discriminators({ ...q, tailShare })
  return { ...found, similar: found.highShare < marginShare }
}

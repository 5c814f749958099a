import { mustBeWithin } from '../checks'
import { binomialTail } from '../distributions/binomial-tail'
import { CHANCE_SHARE } from './constants'
import { type LeastTasters, leastTasters } from './least-tasters'
import { mostCorrect } from './most-correct'
import type { KnownAnswerTest } from './types'

/**
 * Number of tasters with which similarity is shown with a wanted power, if only `trueShare` of them can tell.
 * @param marginShare, confidence as in similarity; @param trueShare 0 ≤ t < marginShare; @param power 0 < power < 1
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'too-many-tasters' beyond 2000
 * Source: exact binomial, see mostCorrect.
 * @example tastersForSimilarity({ test: 'triangle', marginShare: 0.3, confidence: 0.95, trueShare: 0, power: 0.8 }).tasters // 39
 */
export function tastersForSimilarity(q: {
  test: KnownAnswerTest
  marginShare: number
  confidence: number
  trueShare: number
  power: number
}): LeastTasters {
  mustBeWithin('marginShare', q.marginShare, { over: 0, under: 1 })
  const trueShare = mustBeWithin('trueShare', q.trueShare, { min: 0, under: q.marginShare })
  const chance = CHANCE_SHARE[q.test]
  const share = chance + (1 - chance) * trueShare
  const powerAt = (tasters: number) => {
    const most = mostCorrect({ ...q, tasters })
    return most === null ? 0 : binomialTail({ k: most, n: tasters, share, tail: 'lower' })
  }
  return leastTasters({ power: q.power, powerAt })
}

import { mustBeWhole, mustBeWithin } from '../checks'
import { MOST_TASTERS } from './constants'
import { discriminationP } from './discrimination-p'
import type { DifferenceTest } from './types'

export type LeastCorrect = {
  /** Null where not even all right would be enough. For `paired-two-sided` the count of the larger side. */
  correct: number | null
  /** The chance of that count or more by guessing; at most the level asked for. */
  actualAlpha: number | null
}

/** A chance that equals the level, such as 1/32, may come out above it by rounding. */
const ROUNDING = 1 + 1e-11

/**
 * Fewest right answers that are significant at a level.
 * @param tasters whole, 1 to 10 000; @param alpha 1e-6 ≤ α ≤ 0.5
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: exact binomial; tables of FAO document V7180E, ISO 10399 and ISO 5495.
 * @example leastCorrect({ test: 'triangle', tasters: 24, alpha: 0.05 }).correct // 13
 */
export function leastCorrect(q: { test: DifferenceTest; tasters: number; alpha: number }): LeastCorrect {
  const n = mustBeWhole('tasters', q.tasters, { min: 1, max: MOST_TASTERS })
  const alpha = mustBeWithin('alpha', q.alpha, { min: 1e-6, max: 0.5 })
  const chance = (correct: number) => discriminationP({ test: q.test, tasters: n, correct })
  const enough = (correct: number) => chance(correct) <= alpha * ROUNDING
  if (!enough(n)) return { correct: null, actualAlpha: null }
  // below half the two-sided p rises again, so the search stays on the larger side
  let [few, many] = [Math.ceil(n / 2) - 1, n]
  if (q.test !== 'paired-two-sided') few = -1
  while (many - few > 1) {
    const middle = Math.floor((few + many) / 2)
    if (enough(middle)) many = middle
    else few = middle
  }
  return { correct: many, actualAlpha: chance(many) }
}

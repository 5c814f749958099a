import { mustBeWhole, mustBeWithin } from '../checks'
import { binomialTail } from '../distributions/binomial-tail'
import { bracketedRoot } from '../distributions/bracketed-root'
import { MOST_TASTERS } from './constants'

/** Limits nearer to 0 or 1 than this are not told apart from them. */
const EDGE = 1e-14

/**
 * Exact limits of a binomial share: the shares at which what was seen, or less (or more), has the chance `tailShare`.
 * A two-sided interval of 95 % has 0.025 on each side, a one-sided limit of 95 % has 0.05.
 * @param correct whole, 0 to tasters; @param tasters whole, 1 to 10 000; @param tailShare 1e-6 ≤ t ≤ 0.5
 * @returns lowShare 0 where none, highShare 1 where all
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Clopper & Pearson (1934), Biometrika 26.
 * @example clopperPearson({ correct: 16, tasters: 30, tailShare: 0.025 }) // 0.3433 to 0.7166
 */
export function clopperPearson(q: { correct: number; tasters: number; tailShare: number }): {
  lowShare: number
  highShare: number
} {
  const n = mustBeWhole('tasters', q.tasters, { min: 1, max: MOST_TASTERS })
  const k = mustBeWhole('correct', q.correct, { min: 0, max: n })
  const goal = mustBeWithin('tailShare', q.tailShare, { min: 1e-6, max: 0.5 })
  const limit = (tail: 'lower' | 'upper') =>
    bracketedRoot({
      f: (share) => binomialTail({ k, n, share, tail }) - goal,
      low: EDGE,
      high: 1 - EDGE,
      tolerance: 1e-17,
    })
  return { lowShare: k === 0 ? 0 : limit('upper'), highShare: k === n ? 1 : limit('lower') }
}

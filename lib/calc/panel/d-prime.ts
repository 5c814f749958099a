import { mustBeWithin } from '../checks'
import { bracketedRoot } from '../distributions/bracketed-root'
import { clopperPearson } from './clopper-pearson'
import { CHANCE_SHARE } from './constants'
import { correctShare } from './correct-share'
import type { KnownAnswerTest } from './types'

export type DPrime = {
  correctShare: number
  correctLowShare: number
  correctHighShare: number
  /** Null where all were right: the difference is then larger than such a test can size. */
  dPrime: number | null
  dPrimeLow: number
  /** Null where the interval is open upwards. */
  dPrimeHigh: number | null
  /** √(pc (1 − pc) / n) / slope; null at d′ = 0, where the slope may be zero, and where d′ is null. */
  standardError: number | null
  /** `at-or-below-chance`: no more right answers than by guessing; `all-correct`: no upper bound. */
  warnings: ('at-or-below-chance' | 'all-correct')[]
}

const LARGEST = 30

/**
 * Size of a difference, d′, from right answers: the inverse of correctShare, with the standard error by the delta method
 * and the limits of Clopper and Pearson carried over. A share at or below chance is d′ = 0.
 * @param correct whole, 0 to tasters; @param tasters whole, 1 to 10 000; @param confidence 0.5 ≤ c ≤ 0.9999, two-sided
 * @returns d′ about 1e-12, 1e-8 close to zero
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Bi, Ennis & O'Mahony (1997), Journal of Sensory Studies 12; limits: Clopper & Pearson (1934).
 * @example dPrime({ test: 'triangle', tasters: 30, correct: 16, confidence: 0.95 }).dPrime // 1.638
 */
export function dPrime(q: { test: KnownAnswerTest; tasters: number; correct: number; confidence: number }): DPrime {
  const tailShare = (1 - mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })) / 2
  const limits = clopperPearson({ ...q, tailShare })
  const share = q.correct / q.tasters
  const estimate = share === 1 ? null : distance(q.test, share)
  const spread = Math.sqrt((share * (1 - share)) / q.tasters)
  return {
    correctShare: share,
    correctLowShare: limits.lowShare,
    correctHighShare: limits.highShare,
    dPrime: estimate,
    dPrimeLow: distance(q.test, limits.lowShare),
    dPrimeHigh: limits.highShare === 1 ? null : distance(q.test, limits.highShare),
    standardError:
      estimate === null || estimate === 0 ? null : spread / correctShare({ test: q.test, dPrime: estimate }).slope,
    warnings: [
      ...(estimate === 0 ? (['at-or-below-chance'] as const) : []),
      ...(estimate === null ? (['all-correct'] as const) : []),
    ],
  }
}

/** d′ of a share of right answers below 1. */
function distance(test: KnownAnswerTest, share: number): number {
  // 1/3 of 21 is 7 in numbers that cannot hold a third
  if (share <= CHANCE_SHARE[test] * (1 + 1e-14)) return 0
  return bracketedRoot({
    f: (d) => correctShare({ test, dPrime: d }).correctShare - share,
    low: 0,
    high: LARGEST,
    tolerance: 1e-14,
  })
}

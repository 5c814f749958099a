import { mustBeWithin } from '../checks'
import { normalQuantile } from '../distributions/normal-quantile'
import { clopperPearson } from './clopper-pearson'
import { CHANCE_SHARE } from './constants'
import type { KnownAnswerTest } from './types'

/** `exact`: limits of Clopper and Pearson. `normal`: pc ± z √(pc (1 − pc) / n), as printed under the tables of the standards. */
export type LimitMethod = 'exact' | 'normal'

export type Discriminators = {
  correctShare: number
  /** Negative where fewer were right than by guessing. */
  discriminatorShare: number
  lowShare: number
  highShare: number
  /** `below-chance`: look whether samples or answers were mixed up. `few-tasters`: fewer than 30. */
  warnings: ('below-chance' | 'few-tasters')[]
}

/** ISO 5495, note 2 under table A.3: fewer are not recommended for similarity. */
const FEW_TASTERS = 30

/**
 * Share of tasters who truly tell the samples apart, if the others guess: pd = (pc − c) / (1 − c), with its limits,
 * which are carried over from those of pc and not cut off at zero.
 * @param correct whole, 0 to tasters; @param tasters whole, 1 to 10 000
 * @param tailShare error on each side, 1e-6 ≤ t ≤ 0.5: 0.05 for a one-sided limit of 95 %
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: ISO 4120, ISO 10399 and ISO 5495 (pd; the normal limits); Clopper & Pearson (1934) (the exact ones).
 * @example discriminators({ test: 'triangle', tasters: 60, correct: 24, tailShare: 0.05, method: 'exact' }).discriminatorShare // 0.1
 */
export function discriminators(q: {
  test: KnownAnswerTest
  tasters: number
  correct: number
  tailShare: number
  method: LimitMethod
}): Discriminators {
  mustBeWithin('tailShare', q.tailShare, { min: 1e-6, max: 0.5 })
  const chance = CHANCE_SHARE[q.test]
  const exact = clopperPearson(q)
  const share = q.correct / q.tasters
  const half = normalQuantile({ p: q.tailShare, tail: 'upper' }) * Math.sqrt((share * (1 - share)) / q.tasters)
  const [low, high] = q.method === 'exact' ? [exact.lowShare, exact.highShare] : [share - half, share + half]
  const telling = (right: number) => (right - chance) / (1 - chance)
  return {
    correctShare: share,
    discriminatorShare: telling(share),
    lowShare: telling(low),
    highShare: telling(high),
    warnings: [
      ...(share < chance * (1 - 1e-14) ? (['below-chance'] as const) : []),
      ...(q.tasters < FEW_TASTERS ? (['few-tasters'] as const) : []),
    ],
  }
}

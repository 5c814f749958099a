import { binomialTail } from '../distributions/binomial-tail'
import { leastCorrect } from './least-correct'
import { shareOfEffect } from './share-of-effect'
import type { DifferenceTest, EffectKind } from './types'

export type DiscriminationPower = {
  /** Fewest right answers that are significant; null where not even all right would be, and the power is then 0. */
  leastCorrect: number | null
  actualAlpha: number | null
  correctShare: number
  power: number
}

/**
 * Chance that a difference of a stated size is found.
 * @param tasters whole, 1 to 10 000; @param alpha 1e-6 ≤ α ≤ 0.5; @param effectKind, effect as in shareOfEffect
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: exact binomial; Ennis (1993), Journal of Sensory Studies 8. Both sides count in the two-sided paired test.
 * @example discriminationPower({ test: 'triangle', tasters: 30, alpha: 0.05, effectKind: 'd-prime', effect: 1.5 }).power // 0.6
 */
export function discriminationPower(q: {
  test: DifferenceTest
  tasters: number
  alpha: number
  effectKind: EffectKind
  effect: number
}): DiscriminationPower {
  const { correct, actualAlpha } = leastCorrect(q)
  const share = shareOfEffect(q)
  const n = q.tasters
  if (correct === null) return { leastCorrect: null, actualAlpha: null, correctShare: share, power: 0 }
  const right = binomialTail({ k: correct, n, share, tail: 'upper' })
  const wrong = q.test === 'paired-two-sided' ? binomialTail({ k: n - correct, n, share, tail: 'lower' }) : 0
  return { leastCorrect: correct, actualAlpha, correctShare: share, power: right + wrong }
}

import { mustBeWithin } from '../checks'
import { CHANCE_SHARE } from './constants'
import { correctShare } from './correct-share'
import type { DifferenceTest, EffectKind } from './types'

/**
 * Share of right answers that goes with a difference, however its size is stated. For the two-sided paired test it is the
 * share on the larger side.
 * @param effect d′, 0 < d′ ≤ 10; right answers in all, above chance and below 1; tasters who tell, 0 < pd < 1
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Thurstone's model (correctShare); guessing model pc = c + (1 − c) pd, ISO 4120.
 * @example shareOfEffect({ test: 'triangle', effectKind: 'discriminator-share', effect: 0.4 }) // 0.6
 */
export function shareOfEffect(q: { test: DifferenceTest; effectKind: EffectKind; effect: number }): number {
  const chance = CHANCE_SHARE[q.test]
  switch (q.effectKind) {
    case 'd-prime': {
      const dPrime = mustBeWithin('effect', q.effect, { over: 0, max: 10 })
      return correctShare({ test: q.test === 'paired-two-sided' ? 'paired' : q.test, dPrime }).correctShare
    }
    case 'correct-share':
      return mustBeWithin('effect', q.effect, { over: chance, under: 1 })
    case 'discriminator-share':
      return chance + (1 - chance) * mustBeWithin('effect', q.effect, { over: 0, under: 1 })
  }
}

import { discriminationPower } from './discrimination-power'
import { type LeastTasters, leastTasters } from './least-tasters'
import type { DifferenceTest, EffectKind } from './types'

/**
 * Number of tasters with which a difference of a stated size is found with a wanted power.
 * @param alpha 1e-6 ≤ α ≤ 0.5; @param power 0 < power < 1; @param effectKind, effect as in shareOfEffect
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'too-many-tasters' beyond 2000
 * Source: exact binomial, see discriminationPower.
 * @example tastersNeeded({ test: 'triangle', alpha: 0.05, power: 0.9, effectKind: 'correct-share', effect: 0.6 }).tasters // 30
 */
export function tastersNeeded(q: {
  test: DifferenceTest
  alpha: number
  power: number
  effectKind: EffectKind
  effect: number
}): LeastTasters {
  return leastTasters({ power: q.power, powerAt: (tasters) => discriminationPower({ ...q, tasters }).power })
}

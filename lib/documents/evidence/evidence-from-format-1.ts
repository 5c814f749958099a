import 'server-only'
import type { Evidence } from './evidence'
import type { EvidenceOfFormat1 } from './evidence-of-format-1'

/** Evidence of format 1, which said nothing of single mixing days and of where limits lie. */
export function evidenceFromFormat1(kept: EvidenceOfFormat1): Evidence {
  const { bakery, trial, declared, isIndication, conditions, controlMean, limits, costs, frozen } = kept
  return {
    bakery,
    trial,
    declared,
    isIndication,
    conditions,
    controlMean,
    limits,
    costs,
    frozen,
    arms: kept.arms.map((arm) => ({ ...arm, effect: arm.effect && { ...arm.effect, own: null }, lies: null })),
    readings: { ...kept.readings, over: 'hashes' },
  }
}

import 'server-only'
import type { Evidence } from './evidence'
import type { EvidenceOfFormat1 } from './evidence-of-format-1'

/** Evidence of format 1, which said nothing of single mixing days and of where limits lie. */
export function evidenceFromFormat1(kept: EvidenceOfFormat1): Evidence {
  const { bakery, trial, declared, isIndication, conditions, controlMean, limits, costs, frozen } = kept
  return {
    bakery,
    trial,
    // Every verdict was said of any day then.
    declared: { ...declared, holdsFor: 'any_day' },
    isIndication,
    headline: null,
    conditions,
    controlMean,
    limits,
    costs: costsFrom(costs),
    frozen,
    arms: kept.arms.map((arm) => ({ ...arm, effect: arm.effect && { ...arm.effect, own: null }, lies: null })),
    readings: { ...kept.readings, over: 'hashes' },
  }
}

/** One cost a loaf: of good loaves where they were counted for every arm that has a sum, else of planned ones. */
function costsFrom({ arms, ...costs }: EvidenceOfFormat1['costs']): NonNullable<Evidence['costs']> {
  const isByGood = arms.every(({ perGoodPiece, perPlannedPiece }) => perGoodPiece !== null || perPlannedPiece === null)
  return {
    ...costs,
    loaf: isByGood ? 'good' : 'any',
    arms: arms.map(({ arm, unpriced, mixedCurrencies, good, perBatch, perKg, perLitre, ...of }) => ({
      arm,
      unpriced,
      mixedCurrencies,
      good,
      perBatch,
      perKg,
      perLitre,
      perLoaf: isByGood ? of.perGoodPiece : of.perPlannedPiece,
      sameVolume: null,
      differencePerLoaf: isByGood ? of.differencePerGoodPiece : of.differencePerPlannedPiece,
    })),
  }
}

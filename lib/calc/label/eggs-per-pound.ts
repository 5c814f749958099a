import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

/** 21 CFR 136.115(b): whole egg solids of the bread, %, from which on it may be named for egg; solids of a medium egg, oz. */
const LEAST_EGG_SOLIDS_PCT = 2.56
const MEDIUM_EGG_OZ = 0.41

const OZ_PER_LB = 16
const STEPS_PER_EGG = 5

export const EGG_CAUTIONS = [
  'draft-for-competent-person',
  'local-rules-decide',
  'egg-is-an-allergen',
  'solids-of-egg-alone',
] as const
export type EggCaution = (typeof EGG_CAUTIONS)[number]

/**
 * Eggs to declare on enriched egg bread in the United States: 'contains so many medium-sized eggs per pound', to the fifth
 * of an egg and never more than there is. A draft for a competent person.
 * @param eggSolidsPct whole egg solids in the finished bread, %, to 100: what is edible of the egg, without its water, and
 *   without anything else that is in an egg product
 * @returns eggs in a pound, not rounded and as declared
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'too-little-egg' below 2.56 %
 * Source: 21 CFR 136.115(b).
 * @example 2.56 %: 0.4096 oz in a pound, 0.99902 eggs, declared as 0.8
 */
export function eggsPerPound(q: { eggSolidsPct: number }): {
  isDraft: true
  eggsInLb: number
  declaredEggs: number
  cautions: EggCaution[]
} {
  const eggSolidsPct = mustBeWithin('eggSolidsPct', q.eggSolidsPct, { min: 0, max: 100 })
  if (eggSolidsPct < LEAST_EGG_SOLIDS_PCT) {
    throw new CalcError('not-possible', {
      field: 'eggSolidsPct',
      value: eggSolidsPct,
      min: LEAST_EGG_SOLIDS_PCT,
      reason: 'too-little-egg',
    })
  }
  const eggsInLb = (eggSolidsPct / 100) * (OZ_PER_LB / MEDIUM_EGG_OZ)
  // A whole fifth but for binary dust is that fifth.
  const fifths = Math.floor(Number((eggsInLb * STEPS_PER_EGG).toPrecision(12)))
  return { isDraft: true, eggsInLb, declaredEggs: fifths / STEPS_PER_EGG, cautions: [...EGG_CAUTIONS] }
}

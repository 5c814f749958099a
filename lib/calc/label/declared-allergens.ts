import { CalcError } from '../error'
import { ALLERGENS, type Allergen, type AllergenGroup, type LabelCaution, type LabelRegion } from './types'

const GLUTEN_CEREALS: readonly Allergen[] = ['wheat', 'spelt', 'khorasan-wheat', 'rye', 'barley', 'oats']
const NUTS: readonly Allergen[] = [
  'almonds',
  'hazelnuts',
  'walnuts',
  'cashews',
  'pecans',
  'brazil-nuts',
  'pistachios',
  'macadamia-nuts',
]
/** Spelt and khorasan are kinds of wheat; rye, barley and oats are not. */
const US_WHEAT: readonly Allergen[] = ['wheat', 'spelt', 'khorasan-wheat']
const ALIKE_IN_BOTH = ['crustaceans', 'egg', 'fish', 'peanuts', 'soya', 'milk', 'sesame'] as const
const EU_ALONE = ['celery', 'mustard', 'sulphites', 'lupin', 'molluscs'] as const

export type DeclaredAllergens = {
  isDraft: true
  /** One for each allergen there is, with the group that the rule lists it under. */
  declared: { group: AllergenGroup; named: Allergen }[]
  /** There, but not on this region's list: whoever must avoid it learns nothing from that label. */
  notListed: Allergen[]
  cautions: LabelCaution[]
}

/**
 * Which allergens a region's rule asks to be declared, in the order of ALLERGENS. The EU lists 14 groups and names the
 * cereal or nut; the United States list nine, and wheat there does not cover barley, rye or oats.
 * @param present what the food holds; one named twice counts once
 * @throws CalcError 'out-of-range' for an allergen or region that is not known
 * Source: Regulation (EU) No 1169/2011, Annex II; FALCPA (2004) and FASTER Act (2021). Local rules decide.
 */
export function declaredAllergens(q: { present: readonly Allergen[]; region: LabelRegion }): DeclaredAllergens {
  const unknown = q.present.findIndex((allergen) => !ALLERGENS.includes(allergen))
  if (unknown >= 0) throw new CalcError('out-of-range', { field: `present[${unknown}]`, value: q.present[unknown] })
  const declared: DeclaredAllergens['declared'] = []
  const notListed: Allergen[] = []
  for (const allergen of ALLERGENS.filter((one) => q.present.includes(one))) {
    const group = groupOf(allergen, q.region)
    if (group === null) notListed.push(allergen)
    else declared.push({ group, named: allergen })
  }
  const cautions: LabelCaution[] = [
    'draft-for-competent-person',
    'local-rules-decide',
    'traces-not-covered',
    'milk-most-often-missed',
  ]
  if (q.present.includes('sulphites')) cautions.push('sulphites-above-10-mg-per-kg')
  return { isDraft: true, declared, notListed, cautions }
}

function groupOf(allergen: Allergen, region: LabelRegion): AllergenGroup | null {
  const alike = [...ALIKE_IN_BOTH].find((one) => one === allergen)
  if (alike !== undefined) return alike
  if (NUTS.includes(allergen)) return 'nuts'
  switch (region) {
    case 'eu':
      return GLUTEN_CEREALS.includes(allergen) ? 'gluten' : ([...EU_ALONE].find((one) => one === allergen) ?? null)
    case 'us':
      return US_WHEAT.includes(allergen) ? 'wheat' : null
    default: {
      const never: never = region
      throw new CalcError('out-of-range', { field: 'region', value: String(never) })
    }
  }
}

import { mustBeWithin } from '../checks'
import { declaredAllergens } from './declared-allergens'
import { readIngredients, type LabelLine, type LabelPart } from './read-ingredients'
import { nameKey } from './name-key'
import type { AdditiveClass, Allergen, AllergenGroup, AllergenStatement, LabelCaution, LabelRegion } from './types'

/** Added water up to this part of the bread may be left out; below the other, ingredients may stand last in any order. */
const WATER_LEFT_OUT_SHARE = 0.05
const ANY_ORDER_SHARE = 0.02
/** Less than this of what was weighed in is no bread. */
const LEAST_BREAD_SHARE = 0.001

export type IngredientList = {
  isDraft: true
  entries: {
    place: number
    name: string
    /** The compound ingredient that it is part of, whose brackets it stands in. */
    inside: string | null
    massG: number
    pctOfBread: number
    additiveClass: AdditiveClass | null
    /** Holds an allergen that must stand out: by type, style or background. */
    isEmphasised: boolean
    /** Below 2 %: may stand after the others in any order. Nothing is left out for it. */
    mayStandLast: boolean
  }[]
  /** In the bread: bread less all else that was weighed in (EU), or as weighed in (US). */
  addedWaterG: number
  isWaterLeftOut: boolean
  allergens: { of: string; group: AllergenGroup; named: Allergen }[]
  /** Lines, and parts of mixes, of which nobody has said an allergen or 'none'. */
  withoutStatement: string[]
  cautions: LabelCaution[]
}

/**
 * List of ingredients in descending mass as weighed in, compound ingredients opened up in their own descending order.
 * EU: added water counts by what is left of it in the bread, and is left out up to 5 %. United States: as weighed in.
 * @param lines at least one; each > 0 g, lines of one name (case and white space aside) are added up.
 *   parts: what compound lines are made of, % of the compound.
 *   allergens: of lines or parts, by name; 'none' where somebody judged that there is none
 * @param bakedMassG all bread of the batch, g, a thousandth to all of what was weighed in
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range' | 'duplicate'; 'not-possible' with reason
 *   'unknown-ingredient', 'lines-disagree' or 'parts-over-100'
 * Source: Regulation (EU) No 1169/2011, Articles 18 to 21 and Annex VII, Parts A and E; 21 CFR 101.4(a), from memory.
 *   Always a draft that a competent person checks.
 */
export function ingredientList(q: {
  lines: readonly LabelLine[]
  parts: readonly LabelPart[]
  allergens: readonly { of: string; allergen: AllergenStatement }[]
  bakedMassG: number
  region: LabelRegion
}): IngredientList {
  const { ingredients, weighedG, allergensOf, withoutStatement, partsAddUp } = readIngredients(q)
  const bakedMassG = mustBeWithin('bakedMassG', q.bakedMassG, { min: LEAST_BREAD_SHARE * weighedG, max: weighedG })
  const waterInG = ingredients.reduce((sum, one) => sum + (one.isAddedWater ? one.massG : 0), 0)
  const addedWaterG = q.region === 'us' ? waterInG : Math.min(waterInG, Math.max(0, bakedMassG - (weighedG - waterInG)))
  const isWaterLeftOut =
    waterInG > 0 && (addedWaterG === 0 || (q.region === 'eu' && addedWaterG <= WATER_LEFT_OUT_SHARE * bakedMassG))
  const allergens = [...allergensOf.values()].flatMap(({ of, present }) =>
    declaredAllergens({ present, region: q.region }).declared.map((one) => ({ of, ...one })),
  )
  const must = new Set(allergens.map(({ of }) => nameKey(of)))
  const entry = (name: string, massG: number, additiveClass: AdditiveClass | null, inside: string | null) => ({
    name,
    inside,
    massG,
    pctOfBread: (massG / bakedMassG) * 100,
    additiveClass,
    isEmphasised: must.has(nameKey(name)),
    mayStandLast: inside === null && massG < ANY_ORDER_SHARE * bakedMassG,
  })
  const entries = ingredients
    .filter((one) => !(one.isAddedWater && isWaterLeftOut))
    .map((one) => (one.isAddedWater ? { ...one, massG: (one.massG / waterInG) * addedWaterG } : one))
    .sort((a, b) => b.massG - a.massG)
    .flatMap((one) => [
      entry(one.name, one.massG, one.additiveClass, null),
      ...[...one.parts]
        .sort((a, b) => b.sharePct - a.sharePct)
        .map((part) => entry(part.name, (part.sharePct / 100) * one.massG, part.additiveClass ?? null, one.name)),
    ])
    .map((one, i) => ({ place: i + 1, ...one }))
  const { cautions } = declaredAllergens({ present: [...allergensOf.values()].flatMap((one) => one.present), region: q.region })
  if (allergensOf.size === 0) cautions.push('no-allergens-given')
  else if (withoutStatement.length > 0) cautions.push('some-allergens-not-given')
  if (!partsAddUp) cautions.push('parts-do-not-add-up')
  return { isDraft: true, entries, addedWaterG, isWaterLeftOut, allergens, withoutStatement, cautions }
}

import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { groupBy } from '../group-by'
import { declaredAllergens } from './declared-allergens'
import { nameKey } from './name-key'
import { namingOf } from './naming-of'
import { openMixes } from './open-mixes'
import {
  readIngredients,
  type LabelAllergen,
  type LabelIngredient,
  type LabelLine,
  type LabelPart,
  type ReadIngredients,
} from './read-ingredients'
import type { AdditiveClass, Allergen, AllergenGroup, LabelCaution, LabelRegion, Naming } from './types'
import { usAllergenWords } from './us-allergen-words'

/** Added water up to this part of the bread may be left out; below the other, ingredients may stand last in any order. */
const WATER_LEFT_OUT_SHARE = 0.05
const ANY_ORDER_SHARE = 0.02
/** The figures that 'contains … % or less of' may have in the United States. */
const US_LAST_PCT = [0.5, 1, 1.5, 2] as const
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
    eNumber: string | null
    /** How it is named; of the EU's rule. In the United States by its name. */
    sayAs: Naming
    /** For the United States, in brackets after the name: the sources of its allergens. */
    sourceInBrackets: string | null
    /** Holds an allergen that must stand out: by type, style or background. */
    isEmphasised: boolean
    /** Below 2 % (United States: to 2 %): may stand after the others in any order. Nothing is left out for it. */
    mayStandLast: boolean
    /** Part of a mix below 2 % that is exempt; never an additive, an allergen or what nobody has judged. */
    mayBeLeftOut: boolean
  }[]
  /** In the bread: bread less all else that was weighed in (EU), or as weighed in (US). */
  addedWaterG: number
  isWaterLeftOut: boolean
  /** United States: 'contains so many % or less of' before those that stand last; none of them is above it. */
  lastUpToPct: number | null
  allergens: { of: string; group: AllergenGroup; named: Allergen; species: string | null }[]
  /** United States: the sentence after the list, with all that the draft has of the nine. */
  containsSentence: string | null
  /** Lines, and parts of mixes, of which nobody has said an allergen or 'none'. */
  withoutStatement: string[]
  cautions: LabelCaution[]
}

/**
 * List of ingredients in descending mass as weighed in. A mix stands with its own list in brackets, in descending order, or
 * is opened into the list, as each line says. EU: added water counts by what is left of it in the bread, and is left out up
 * to 5 %; what is volatile counts by what is left. United States: as weighed in.
 * @param lines at least one; each > 0 g, lines of one name (case and white space aside) are added up.
 *   parts: what compound lines are made of, % of the compound.
 *   allergens: of lines or parts, by name; 'none' where somebody judged that there is none
 * @param bakedMassG all bread of the batch, g, a thousandth to all of what was weighed in
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range' | 'duplicate' | 'wrong-shape'; 'not-possible' with reason
 *   'unknown-ingredient', 'lines-disagree', 'parts-over-100', 'water-is-worked-out', 'number-without-class',
 *   'no-species-asked', 'water-holds-more', or one of openMixes
 * Source: Regulation (EU) No 1169/2011, Articles 18 to 21 and Annex VII, Parts A, C and E (E and the exemption below 2 %
 *   from memory); 21 CFR 101.4(a)(1), from memory, and (a)(2); FALCPA (2004) and FASTER Act (2021).
 *   Always a draft that a competent person checks.
 */
export function ingredientList(q: {
  lines: readonly LabelLine[]
  parts: readonly LabelPart[]
  allergens: readonly LabelAllergen[]
  bakedMassG: number
  region: LabelRegion
}): IngredientList {
  const isUs = q.region === 'us'
  const { ingredients: read, weighedG, allergensOf, withoutStatement, partsAddUp } = readIngredients(q)
  const bakedMassG = mustBeWithin('bakedMassG', q.bakedMassG, { min: LEAST_BREAD_SHARE * weighedG, max: weighedG })
  const ingredients = openMixes({ ingredients: read, allergensOf })
  mustBeWaterAlone(ingredients, allergensOf)
  const { waterInG, addedWaterG, isWaterLeftOut } = waterIn(ingredients, weighedG, bakedMassG, isUs)
  const allergens = [...allergensOf.values()].flatMap(({ of, present, species }) =>
    declaredAllergens({ present, region: q.region }).declared.flatMap((one) => {
      const kinds = species.filter(({ allergen }) => allergen === one.named).map(({ name }) => name)
      return (kinds.length === 0 ? [null] : kinds).map((kind) => ({ of, ...one, species: kind }))
    }),
  )
  const must = groupBy(allergens, ({ of }) => nameKey(of))
  const countedG = (one: LabelIngredient) => {
    if (one.isAddedWater) return (one.massG / waterInG) * addedWaterG
    return isUs ? one.massG : one.leftInBreadG
  }
  const entry = (
    name: string,
    massG: number,
    one: { additiveClass: AdditiveClass | null; eNumber: string | null },
    mix: LabelIngredient | null,
  ) => {
    const said = allergensOf.get(nameKey(name))?.present ?? null
    const isFree =
      said?.length === 0 || (said === null && mix !== null && allergensOf.get(nameKey(mix.name))?.present.length === 0)
    const sources = must.get(nameKey(name)) ?? []
    return {
      name,
      inside: mix?.name ?? null,
      massG,
      pctOfBread: (massG / bakedMassG) * 100,
      additiveClass: one.additiveClass,
      eNumber: one.eNumber,
      sayAs: isUs ? 'name' : namingOf({ ...one, present: isFree ? [] : said }),
      sourceInBrackets: isUs && sources.length > 0 ? usAllergenWords(sources).join(', ') : null,
      isEmphasised: sources.length > 0,
      mayStandLast: mix === null && mayStandLast(massG, bakedMassG, isUs),
      mayBeLeftOut:
        !isUs &&
        mix !== null &&
        mix.exemptMix !== null &&
        countedG(mix) < ANY_ORDER_SHARE * bakedMassG &&
        one.additiveClass === null &&
        isFree,
    } satisfies Omit<IngredientList['entries'][number], 'place'>
  }
  const entries = ingredients
    .filter((one) => !(one.isAddedWater && isWaterLeftOut))
    .map((one) => ({ one, massG: countedG(one) }))
    .sort((a, b) => b.massG - a.massG)
    .flatMap(({ one, massG }) => [
      entry(one.name, massG, one, null),
      ...[...one.parts]
        .sort((a, b) => b.sharePct - a.sharePct)
        .map((part) =>
          entry(
            part.name,
            (part.sharePct / 100) * massG,
            { additiveClass: part.additiveClass ?? null, eNumber: part.eNumber ?? null },
            one,
          ),
        ),
    ])
    .map((one, i) => ({ place: i + 1, ...one }))
  const present = [...allergensOf.values()].flatMap((one) => one.present)
  const { cautions, notListed } = declaredAllergens({ present, region: q.region })
  if (allergensOf.size === 0) cautions.push('no-allergens-given')
  else if (withoutStatement.length > 0) cautions.push('some-allergens-not-given')
  if (!partsAddUp) cautions.push('parts-do-not-add-up')
  if (isUs && allergens.some(({ group, species }) => species === null && (group === 'fish' || group === 'crustaceans')))
    cautions.push('species-not-given')
  if (isUs && allergens.length > 0) cautions.push('one-way-for-us-allergens')
  if (notListed.length > 0) cautions.push('not-on-us-list')
  const mostLastPct = Math.max(0, ...entries.filter((one) => one.mayStandLast).map(({ pctOfBread }) => pctOfBread))
  return {
    isDraft: true,
    entries,
    addedWaterG,
    isWaterLeftOut,
    lastUpToPct: isUs && mostLastPct > 0 ? (US_LAST_PCT.find((pct) => mostLastPct <= pct) ?? 2) : null,
    allergens,
    containsSentence: isUs && allergens.length > 0 ? `Contains: ${usAllergenWords(allergens).join(', ')}.` : null,
    withoutStatement,
    cautions,
  }
}

/** Water may be left out of the list, so nothing that must be in it may be marked as water. */
function mustBeWaterAlone(ingredients: readonly LabelIngredient[], allergensOf: ReadIngredients['allergensOf']): void {
  for (const { isAddedWater, name, additiveClass, parts, lineIndex } of ingredients) {
    const holdsMore =
      additiveClass !== null || parts.length > 0 || (allergensOf.get(nameKey(name))?.present.length ?? 0) > 0
    if (isAddedWater && holdsMore)
      throw new CalcError('not-possible', {
        field: `lines[${lineIndex}].name`,
        value: name,
        reason: 'water-holds-more',
      })
  }
}

function mayStandLast(massG: number, bakedMassG: number, isUs: boolean): boolean {
  return isUs ? massG <= ANY_ORDER_SHARE * bakedMassG : massG < ANY_ORDER_SHARE * bakedMassG
}

/** Of the water that was added, mixes that were opened with theirs, what counts. */
function waterIn(ingredients: readonly LabelIngredient[], weighedG: number, bakedMassG: number, isUs: boolean) {
  const waterInG = ingredients.reduce((sum, one) => sum + (one.isAddedWater ? one.massG : 0), 0)
  const goneG = ingredients.reduce((sum, one) => sum + one.massG - one.leftInBreadG, 0)
  const addedWaterG = isUs ? waterInG : Math.min(waterInG, Math.max(0, bakedMassG - (weighedG - waterInG - goneG)))
  const isWaterLeftOut =
    waterInG > 0 && (addedWaterG === 0 || (!isUs && addedWaterG <= WATER_LEFT_OUT_SHARE * bakedMassG))
  return { waterInG, addedWaterG, isWaterLeftOut }
}

import { CalcError } from '../error'
import { nameKey } from './name-key'
import { LEAST_PARTS_PCT, type LabelIngredient, type LabelPart, type ReadIngredients } from './read-ingredients'

/**
 * Puts the parts of each opened mix into the list in its place, equal substances added up with what is there. Mixes that
 * are not opened stay as they are. No additive and no allergen is lost by it: what a mix says of itself as a whole must be
 * said of its parts before.
 * @param ingredients as readIngredients gives them; none of them is changed
 * @returns ingredients of masses that come to what the mixes' parts come to, g
 * @throws CalcError 'not-possible' with reason 'parts-not-in-full' (below 99.5 %), 'only-a-mix-opens' (added water, what is
 *   volatile, or an additive with a class of its own), 'mix-within-mix', 'allergen-of-whole-mix' or 'lines-disagree'
 * Source: Regulation (EU) No 1169/2011, Annex VII, Part E, from memory; 21 CFR 101.4(b)(2), from memory.
 * @example sugar 80 g, and 120 g of chips of which half is sugar: 140 g of sugar
 */
export function openMixes({
  ingredients,
  allergensOf,
}: Pick<ReadIngredients, 'ingredients' | 'allergensOf'>): LabelIngredient[] {
  const opened = ingredients.filter(({ isOpened }) => isOpened)
  const openedKeys = new Set(opened.map(({ name }) => nameKey(name)))
  const list = new Map(ingredients.filter(({ isOpened }) => !isOpened).map((one) => [nameKey(one.name), { ...one }]))
  for (const mix of opened) {
    mustOpen(mix, allergensOf)
    for (const part of mix.parts) {
      const key = nameKey(part.name)
      if (openedKeys.has(key)) throw refusal(mix, part.name, 'mix-within-mix')
      const massG = (part.sharePct / 100) * mix.massG
      const held = list.get(key)
      list.set(key, held === undefined ? asIngredient(part, massG, mix) : addedUp(held, part, massG, mix))
    }
  }
  return [...list.values()]
}

function mustOpen(mix: LabelIngredient, allergensOf: ReadIngredients['allergensOf']): void {
  const sumPct = mix.parts.reduce((sum, { sharePct }) => sum + sharePct, 0)
  if (mix.isAddedWater || mix.additiveClass !== null || mix.leftInBreadG < mix.massG)
    throw refusal(mix, mix.name, 'only-a-mix-opens')
  if (sumPct < LEAST_PARTS_PCT) throw refusal(mix, mix.name, 'parts-not-in-full')
  const ofParts = new Set(mix.parts.flatMap(({ name }) => allergensOf.get(nameKey(name))?.present ?? []))
  const ofNoPart = allergensOf.get(nameKey(mix.name))?.present.some((allergen) => !ofParts.has(allergen))
  if (ofNoPart) throw refusal(mix, mix.name, 'allergen-of-whole-mix')
}

function asIngredient(part: LabelPart, massG: number, { lineIndex }: LabelIngredient): LabelIngredient {
  return {
    name: part.name.trim(),
    massG,
    leftInBreadG: massG,
    isAddedWater: part.isAddedWater ?? false,
    additiveClass: part.additiveClass ?? null,
    eNumber: part.eNumber ?? null,
    isOpened: false,
    exemptMix: null,
    parts: [],
    lineIndex,
  }
}

/** What the part leaves unsaid is as the ingredient of that name has it; of a volatile one as much is left of either. */
function addedUp(held: LabelIngredient, part: LabelPart, massG: number, mix: LabelIngredient): LabelIngredient {
  const { isAddedWater = held.isAddedWater, additiveClass = held.additiveClass, eNumber = held.eNumber } = part
  if (isAddedWater !== held.isAddedWater || additiveClass !== held.additiveClass || eNumber !== held.eNumber) {
    throw refusal(mix, part.name, 'lines-disagree')
  }
  const leftInBreadG = held.leftInBreadG + massG * (held.leftInBreadG / held.massG)
  return { ...held, massG: held.massG + massG, leftInBreadG }
}

function refusal({ lineIndex }: LabelIngredient, value: string, reason: string): CalcError {
  return new CalcError('not-possible', { field: `lines[${lineIndex}].isOpened`, value, reason })
}

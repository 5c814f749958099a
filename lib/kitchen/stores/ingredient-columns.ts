import 'server-only'
import { Decimal } from '../../calc/cost/decimal'
import { allergen, countedPart, figure, type IngredientFacts } from './ingredient-facts.input'

/** The facts of an ingredient as its row holds them, its composition apart. A step that adding and changing share. */
export function ingredientColumns(facts: IngredientFacts) {
  return {
    name: facts.name,
    kind: facts.kind,
    labelName: facts.labelName,
    activeName: facts.active?.name ?? null,
    activeShare: facts.active ? new Decimal(facts.active.pct).dividedBy(100).toNumber() : null,
    customaryLeastPct: facts.customary?.leastPct ?? null,
    customaryMostPct: facts.customary?.mostPct ?? null,
    customarySource: facts.customary?.source ?? null,
    allergens: allergen.options.filter((each) => facts.allergens.includes(each)),
    dustCaution: facts.dustCaution,
    countsAsUsual: facts.counts === null,
    counts: countedPart.options.filter((each) => facts.counts?.includes(each)),
    bindsWater: facts.bindsWater,
    note: facts.note,
  }
}

/** The composition as rows, in the order of the list of figures. */
export function figureRows(facts: IngredientFacts) {
  return figure.options.flatMap((each) => {
    const stated = facts.figures[each]
    return stated ? [{ figure: each, gPer100G: stated.gPer100G, source: stated.source }] : []
  })
}

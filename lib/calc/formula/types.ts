/** Where a line goes. All flour of all stages together is 100 %. */
export type StageKind = 'final-dough' | 'pre-ferment' | 'scald' | 'soaker'

export type Stage = { id: string; kind: StageKind }

/** What a line is to the baker: decides what is locked by habit and what counts as plain water. */
export type IngredientKind =
  | 'flour'
  | 'water'
  | 'yeast'
  | 'salt'
  | 'fat'
  | 'sugar'
  | 'dairy'
  | 'egg'
  | 'improver'
  | 'other'

/**
 * Composition per 100 g as weighed. `null` is 'not stated', never zero.
 * Carbohydrate is by difference and so includes fibre, as in most composition tables.
 */
export type Composition = {
  waterPct: number | null
  proteinPct: number | null
  fatPct: number | null
  carbohydratePct: number | null
  sugarsPct: number | null
  fibrePct: number | null
  ashPct: number | null
  sodiumMgPer100g: number | null
}

export type FormulaLine = {
  id: string
  ingredientId: string
  stageId: string
  massG: number
  kind: IngredientKind
  /** Counts in the 100 %. */
  isFlour: boolean
  /** Counted at full mass as a poured liquid in the German dough yield: water, milk, buttermilk, oil; not egg, quark, yoghurt. */
  isPouredLiquid: boolean
  composition: Composition | null
}

export type Formula = { stages: readonly Stage[]; lines: readonly FormulaLine[] }

/** The constituents that totals, balance and label speak of. Salt is sodium x 2.5. */
export type Nutrient = 'water' | 'fat' | 'protein' | 'sugars' | 'fibre' | 'salt'

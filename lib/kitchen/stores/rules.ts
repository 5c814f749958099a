import type { Allergen, Figure, IngredientKind } from '../../db/generated/enums'

/** Kinds whose powders are known to sensitise the lungs when they are breathed in: flour, malt and enzymes. */
export function isUsuallyDusty(kind: IngredientKind): boolean {
  return kind === 'flour' || kind === 'malt' || kind === 'improver'
}

/** Kinds that are not safe to taste before baking, and with them the raw dough. */
export function isUnsafeRaw(kind: IngredientKind): boolean {
  return kind === 'flour' || kind === 'egg'
}

/**
 * When the allergens of an ingredient count as checked after a change. The former check stands only for the list
 * that was checked: with another list it must be made again.
 */
export function checkedAtAfter(
  former: { allergens: readonly Allergen[]; allergensCheckedAt: Date | null },
  change: { allergens: readonly Allergen[]; check: 'unknown' | 'as-before' | 'checked-now'; now: Date },
): Date | null | 'check-again' {
  switch (change.check) {
    case 'unknown':
      return null
    case 'checked-now':
      return change.now
    case 'as-before': {
      const isSameList =
        former.allergens.length === change.allergens.length &&
        former.allergens.every((each) => change.allergens.includes(each))
      return former.allergensCheckedAt && isSameList ? former.allergensCheckedAt : 'check-again'
    }
    default:
      return change.check satisfies never
  }
}

export type Figures = Partial<Record<Figure, number>>

const allFigures = [
  'water',
  'protein',
  'fat',
  'carbohydrate',
  'sugars',
  'fibre',
  'salt',
] as const satisfies readonly Figure[]

/** How much of the composition is written down. */
export function compositionState(figures: readonly { figure: Figure }[]): 'unknown' | 'in-part' | 'stated' {
  if (figures.length === 0) return 'unknown'
  return allFigures.every((each) => figures.some(({ figure }) => figure === each)) ? 'stated' : 'in-part'
}

export type FigureDoubt = 'above-100' | 'sugars-above-carbohydrate' | 'fibre-above-carbohydrate'

/**
 * What is odd about a composition, in g per 100 g. Official tables have odd rows too (milk has more sugars by
 * analysis than carbohydrate by difference), so it is shown and never refused. Half a gram is left for rounding.
 * Source of the odd rows: USDA National Nutrient Database for Standard Reference, release 28, 2015 (01077).
 */
export function figureDoubts(figures: Figures): FigureDoubt[] {
  const { water = 0, protein = 0, fat = 0, carbohydrate, sugars = 0, fibre = 0 } = figures
  const doubts: FigureDoubt[] = []
  if (water + protein + fat + (carbohydrate ?? 0) > 100.5) doubts.push('above-100')
  if (carbohydrate !== undefined && sugars > carbohydrate) doubts.push('sugars-above-carbohydrate')
  if (carbohydrate !== undefined && fibre > carbohydrate) doubts.push('fibre-above-carbohydrate')
  return doubts
}

export type DatedPrice = {
  /** Time-ordered (UUIDv7), so that it decides between two of one instant. */
  id: string
  /** Calendar day, YYYY-MM-DD. */
  holdsFrom: string
  enteredAt: Date
}

/**
 * The entry that holds on a day: of those that begin on it or before, the latest to begin; of several for one day,
 * the one entered last. Undefined when none had begun. lib/kitchen/stores/price-on.ts says the same in SQL.
 */
export function priceThatHolds<P extends DatedPrice>(entries: readonly P[], day: string): P | undefined {
  return [...entries].filter((entry) => entry.holdsFrom <= day).sort(laterFirst)[0]
}

export type PriceState = 'holds' | 'past' | 'coming' | 'replaced'

/** How an entry stands on a day; `replaced` when a later one was entered for the same date. Latest first. */
export function priceStates<P extends DatedPrice>(entries: readonly P[], day: string): (P & { state: PriceState })[] {
  const holding = priceThatHolds(entries, day)
  return [...entries].sort(laterFirst).map((entry, index, sorted) => {
    const isReplaced = sorted[index - 1]?.holdsFrom === entry.holdsFrom
    const state = entry === holding ? 'holds' : isReplaced ? 'replaced' : entry.holdsFrom > day ? 'coming' : 'past'
    return { ...entry, state }
  })
}

function laterFirst(a: DatedPrice, b: DatedPrice): number {
  return compare(b.holdsFrom, a.holdsFrom) || b.enteredAt.getTime() - a.enteredAt.getTime() || compare(b.id, a.id)
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

/** Whether anything was said of an ingredient's allergens: one that it has, or that it was checked. Silence is not 'none'. */
export function areAllergensSaid(ingredient: {
  allergens: readonly Allergen[]
  allergensCheckedAt: Date | null
}): boolean {
  return ingredient.allergens.length > 0 || ingredient.allergensCheckedAt !== null
}

/** Whether the best-before day of a lot is over on a day, both as YYYY-MM-DD; on that day itself it is not. */
export function isPastBestBefore(bestBefore: string | null, day: string): boolean {
  return bestBefore !== null && day > bestBefore
}

/** What was measured of a lot, out of its columns; null where nothing was. */
export function measuredOfLot(lot: {
  strengthOf: string | null
  strength: number | null
  strengthUnit: string | null
}) {
  const { strengthOf: of, strength: value, strengthUnit: unit } = lot
  return of === null || value === null || unit === null ? null : { of, value, unit }
}

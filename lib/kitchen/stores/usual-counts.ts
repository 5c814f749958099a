import 'server-only'
import type { CountedPart, IngredientKind } from '../../db/generated/enums'

/**
 * Whose water, fat, sugars and protein do in a dough what water, shortening, sugar and milk do there, unless the stores
 * say otherwise. The water of fruit, seeds, grains and improvers stays where it is. Common practice, no source.
 */
export const usualCounts: Record<IngredientKind, readonly CountedPart[]> = {
  flour: ['water'],
  water: ['water'],
  salt: ['water'],
  leaven: ['water'],
  fat: ['water', 'fat'],
  sugar: ['water', 'sugars'],
  dairy: ['water', 'fat', 'sugars', 'protein'],
  egg: ['water', 'fat', 'protein'],
  malt: ['water', 'sugars'],
  improver: [],
  seed_or_grain: [],
  other: [],
}

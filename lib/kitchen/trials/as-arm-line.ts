import 'server-only'
import type { ArmLine, ArmTotal, StandIn } from '../../calc/arms/types'
import type { Composition } from '../../calc/formula/types'
import type { HeldTotal, IngredientKind } from '../../db/generated/enums'
import { calcKinds } from '../formulas/rules'
import type { PlanIngredient } from './plan-types'

/**
 * Whose water, fat, sugars and protein do in a dough what water, shortening, sugar and milk do there, unless the stores
 * say otherwise. The water of fruit, seeds, grains and improvers stays where it is. Common practice, no source.
 */
export const usualCounts: Record<IngredientKind, readonly StandIn[]> = {
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

const waterItself: Composition = {
  waterPct: 100,
  proteinPct: 0,
  fatPct: 0,
  carbohydratePct: 0,
  sugarsPct: 0,
  fibrePct: 0,
  ashPct: 0,
  sodiumMgPer100g: 0,
}

/** An ingredient's composition; plain water without figures is water. */
export function compositionOrWater({ kind, composition }: Pick<PlanIngredient, 'kind' | 'composition'>): Composition | null {
  return composition ?? (kind === 'water' ? waterItself : null)
}

/** A mass of an ingredient as the arm's balance takes it. */
export function asArmLine(id: string, ingredient: PlanIngredient, massG: number, resolutionG: number): ArmLine {
  return {
    id,
    massG,
    kind: calcKinds[ingredient.kind],
    isFlour: ingredient.kind === 'flour',
    composition: compositionOrWater(ingredient),
    standsInFor: ingredient.counts ?? usualCounts[ingredient.kind],
    resolutionG,
  }
}

export const armTotals: Record<HeldTotal, ArmTotal> = {
  dough_mass: 'dough-mass',
  flour: 'flour',
  water: 'water',
  fat: 'fat',
  sugars: 'sugars',
  protein: 'protein',
  salt: 'salt',
}

const heldTotals = Object.fromEntries(Object.entries(armTotals).map(([held, total]) => [total, held])) as Record<ArmTotal, HeldTotal>

export function heldTotalOf(total: ArmTotal): HeldTotal {
  return heldTotals[total]
}

import 'server-only'
import type { ArmLine, ArmTotal } from '../../calc/arms/types'
import type { Composition } from '../../calc/formula/types'
import type { HeldTotal } from '../../db/generated/enums'
import { calcKinds } from '../formulas/rules'
import { usualCounts } from '../stores/usual-counts'
import type { PlanIngredient } from './plan-types'

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
export function compositionOrWater({
  kind,
  composition,
}: Pick<PlanIngredient, 'kind' | 'composition'>): Composition | null {
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

const heldTotals = Object.fromEntries(Object.entries(armTotals).map(([held, total]) => [total, held])) as Record<
  ArmTotal,
  HeldTotal
>

export function heldTotalOf(total: ArmTotal): HeldTotal {
  return heldTotals[total]
}

import 'server-only'
import { specificHeatJPerGK } from '../../calc/temperature/specific-heat'
import type { IngredientKind } from '../../db/generated/enums'
import { compositionOrWater } from './as-arm-line'
import type { PlanIngredient } from './plan-types'

/** Specific heats where the composition does not give them, J/(g·K), from memory: flour about 1.8, salt 0.86, moist things about 3. */
const usualSpecificHeats: Partial<Record<IngredientKind, number>> = {
  flour: 1.8,
  salt: 0.86,
  leaven: 3.2,
  dairy: 3.5,
  egg: 3.2,
}
const otherSpecificHeat = 2

type Heated = Pick<PlanIngredient, 'kind' | 'composition'>

/** An ingredient's specific heat by its composition; where a main part is not stated, what is usual of its kind, as a guess. */
export function specificHeatOf(ingredient: Heated, tempC: number): { specificHeatJPerGK: number; isGuess: boolean } {
  const known = knownSpecificHeat(ingredient, tempC)
  return {
    specificHeatJPerGK: known ?? usualSpecificHeats[ingredient.kind] ?? otherSpecificHeat,
    isGuess: known === null,
  }
}

/** From the composition, with ash as what is left of 100; null where a main part is not stated. */
function knownSpecificHeat(ingredient: Heated, tempC: number): number | null {
  const composition = compositionOrWater(ingredient)
  if (!composition) return null
  const { waterPct, proteinPct, fatPct, carbohydratePct } = composition
  if (waterPct === null || proteinPct === null || fatPct === null || carbohydratePct === null) return null
  const ashPct = composition.ashPct ?? Math.max(0, 100 - waterPct - proteinPct - fatPct - carbohydratePct)
  if (waterPct + proteinPct + fatPct + carbohydratePct + ashPct <= 0) return null
  return specificHeatJPerGK({ composition: { ...composition, ashPct }, tempC: Math.max(0, tempC) })
}

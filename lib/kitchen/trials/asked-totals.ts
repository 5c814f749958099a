import 'server-only'
import type { ArmTotal } from '../../calc/arms/types'
import type { IngredientKind } from '../../db/generated/enums'
import type { DrawnDose } from './drawn-dough'

/** The total that a plain ingredient is there for. */
const plainTotal: Partial<Record<IngredientKind, ArmTotal>> = {
  flour: 'flour',
  water: 'water',
  salt: 'salt',
  fat: 'fat',
  sugar: 'sugars',
}

/**
 * Totals that an arm is about, and so does not hold: a dough without sugar is not filled up again with honey. A
 * replacement at an equal total keeps that one held.
 */
export function askedTotals(doses: readonly DrawnDose[]): ArmTotal[] {
  const asked = doses.flatMap(({ dose, ingredient, insteadOf }): ArmTotal[] => {
    if (dose.how === 'in_place' && insteadOf) {
      const total = plainTotal[insteadOf.kind]
      if (total === undefined || total === dose.equalBy) return []
      return total === 'flour' && ingredient.kind === 'flour' && dose.equalBy === 'mass' ? [] : [total]
    }
    const total = plainTotal[ingredient.kind]
    return total !== undefined && (dose.how === 'in_all' || dose.value < 0) ? [total] : []
  })
  return [...new Set(asked)]
}

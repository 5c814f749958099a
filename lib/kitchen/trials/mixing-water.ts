import 'server-only'
import type { IngredientKind, StageKind } from '../../db/generated/enums'

/** Of lines of an arm, those that `isMixingWater` says yes to. */
export const mixingWater = { ingredient: { kind: 'water' }, stage: { kind: 'final_dough' } } as const

/** What the mixer is given as water: that of the final dough. A pre-ferment's is in it already. */
export function isMixingWater({
  ingredient,
  stage,
}: {
  ingredient: { kind: IngredientKind }
  stage: { kind: StageKind }
}): boolean {
  return ingredient.kind === mixingWater.ingredient.kind && stage.kind === mixingWater.stage.kind
}

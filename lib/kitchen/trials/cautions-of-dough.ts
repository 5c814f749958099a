import 'server-only'
import type { Allergen } from '../../db/generated/enums'

/** What is read of an ingredient of a dough for its cautions. */
export const ingredientForCautions = { id: true, allergens: true, allergensCheckedAt: true } as const

type Ingredient = { id: string; allergens: Allergen[]; allergensCheckedAt: Date | null }

/** What can hurt somebody at a dough: its allergens, and how many of its ingredients nobody has checked for any. */
export function cautionsOfDough({ lines }: { lines: readonly { ingredient: Ingredient }[] }) {
  const ingredients = lines.map(({ ingredient }) => ingredient)
  return {
    allergens: [...new Set(ingredients.flatMap(({ allergens }) => allergens))],
    unchecked: new Set(ingredients.filter((each) => each.allergensCheckedAt === null).map(({ id }) => id)).size,
  }
}

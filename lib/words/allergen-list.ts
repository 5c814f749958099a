import { listOf } from './list-of'
import type { Language, Words } from './words'

/** Allergens in words; what is no allergen, such as the name of an unchecked ingredient, as it stands. */
export function allergenList(list: readonly string[], stores: Words['stores'], language: Language): string {
  return listOf(
    list.map((each) => (stores.allergens as Record<string, string>)[each] ?? each),
    language,
  )
}

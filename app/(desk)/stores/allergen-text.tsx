import { StateWord } from '@/lib/ui/state-word'
import type { Allergen } from '@/lib/kitchen/stores/ingredient-facts.input'
import { listOf } from '@/lib/words/list-of'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

type AllergenTextProps = {
  ingredient: { allergens: readonly Allergen[]; allergensCheckedAt: Date | null }
  text: Words['stores']
  language: Language
}

/** What an ingredient's allergens are, or that nobody has checked them: an empty list alone never reads as 'none'. */
export function AllergenText({ ingredient, text, language }: AllergenTextProps) {
  const { allergens, allergensCheckedAt } = ingredient
  const list = allergens.map((each) => text.allergens[each])
  if (allergensCheckedAt) return list.length > 0 ? listOf(list, language) : text.allergensNone
  const word = list.length > 0 ? say(text.allergensSome, language, { list }) : text.allergensUnknown
  return <StateWord word={word} level={0} tone="warn" />
}

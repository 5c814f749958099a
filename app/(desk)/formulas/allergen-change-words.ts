import type { AllergenChange } from '@/lib/kitchen/formulas/rules'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** A change of allergens, a sentence each: 'Now with milk.', 'No longer with egg.', 'Not known: paste.' */
export function allergenChangeWords(
  change: AllergenChange,
  { sign }: Words['formulas'],
  stores: Words['stores'],
  language: Language,
): string[] {
  const named = (keys: AllergenChange['added']) => keys.map((key) => stores.allergens[key])
  const sentences = [
    { of: sign.added, names: named(change.added) },
    { of: sign.gone, names: named(change.gone) },
    { of: sign.newlyUnchecked, names: change.newlyUnchecked },
    { of: sign.noLongerUnchecked, names: change.noLongerUnchecked },
  ].flatMap(({ of, names }) => (names.length > 0 ? say(of, language, { names: names }) : []))
  return sentences.length > 0 ? sentences : [sign.sameAllergens]
}

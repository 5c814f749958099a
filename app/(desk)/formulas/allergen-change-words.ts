import type { AllergenChange } from '@/lib/kitchen/formulas/rules'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** A change of allergens in one line: 'now with milk; no longer with egg; not known: paste'. */
export function allergenChangeWords(change: AllergenChange, text: Words['formulas'], stores: Words['stores'], language: Language): string {
  const named = (keys: AllergenChange['added']) => keys.map((key) => stores.allergens[key])
  const parts = [
    { of: text.sign.added, names: named(change.added) },
    { of: text.sign.gone, names: named(change.gone) },
    { of: text.sign.newlyUnchecked, names: change.newlyUnchecked },
    { of: text.sign.noLongerUnchecked, names: change.noLongerUnchecked },
  ].filter(({ names }) => names.length > 0)
  return parts.length === 0 ? text.sign.sameAllergens : parts.map(({ of, names }) => say(of, language, { names: names.join(', ') })).join('; ')
}

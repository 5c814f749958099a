import { CalcError } from '../error'
import type { Allergen, AllergenGroup } from './types'

/**
 * The nine of the United States in the order of the two acts. The words are the law's own, for a label that is in English
 * whatever language the screen has; so they are no words of the screen.
 */
const NINE = ['milk', 'egg', 'fish', 'crustaceans', 'nuts', 'wheat', 'peanuts', 'soya', 'sesame'] as const
const WORDS: Record<Exclude<(typeof NINE)[number], 'nuts'>, string> = {
  milk: 'milk',
  egg: 'egg',
  fish: 'fish',
  crustaceans: 'crustacean shellfish',
  wheat: 'wheat',
  peanuts: 'peanuts',
  soya: 'soy',
  sesame: 'sesame',
}

export type UsAllergen = { group: AllergenGroup; named: Allergen; species: string | null }

/**
 * What a US label calls the sources of allergens, each once: fish and crustacean shellfish by their species where it is
 * known, nuts each by its own name.
 * @param declared what declaredAllergens declares for the United States
 * @throws CalcError 'out-of-range' for a group that is not one of the nine
 * Source: US Food Allergen Labeling and Consumer Protection Act (2004) and FASTER Act (2021).
 * @example soya, almonds, fish of no species: ['fish', 'almonds', 'soy']
 */
export function usAllergenWords(declared: readonly UsAllergen[]): string[] {
  const other = declared.find(({ group }) => !NINE.some((one) => one === group))
  if (other !== undefined) throw new CalcError('out-of-range', { field: 'allergens', value: other.group })
  const words = NINE.flatMap((group) =>
    declared
      .filter((one) => one.group === group)
      .map(({ named, species }) => (group === 'nuts' ? named.replaceAll('-', ' ') : (species ?? WORDS[group]))),
  )
  return [...new Map(words.map((word) => [word.toLowerCase(), word])).values()]
}

import 'server-only'
import { calculationWords, type CalculationWords } from '@/lib/kitchen/calculators/calculation-words'
import { wordsIn, type Language, type Words } from '@/lib/words/words'

/** What the parts of a calculation's page share to say things: its own words, the pages' words, locale and language. */
export type Sayer = { own: CalculationWords; text: Words['calculators']; locale: string; language: Language }

export function sayerOf(id: string, language: Language, locale: string): Sayer {
  return { own: calculationWords(id, language), text: wordsIn(language).calculators, locale, language }
}

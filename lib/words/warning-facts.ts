import { allergenList } from './allergen-list'
import type { PlanFormat } from './format/plan-format'
import type { Language, Words } from './words'

type Facts = Readonly<Record<string, string | number>>

/** The facts of a warning as they are read: numbers by the unit in their name, totals and allergens in words. */
export function warningFacts(
  facts: Facts,
  format: PlanFormat,
  { trials, stores }: Pick<Words, 'trials' | 'stores'>,
  language: Language,
): Record<string, string> {
  return Object.fromEntries(
    Object.entries(facts).map(([name, fact]) => {
      if (typeof fact === 'number')
        return [name, name.toLowerCase().endsWith('pct') ? format.pct(fact) : format.mass(fact)]
      if (name === 'total') return [name, trials.totals[fact as keyof typeof trials.totals] ?? fact]
      if (name === 'allergens') return [name, allergenList(fact.split(','), stores, language)]
      return [name, fact]
    }),
  )
}

import { pluralRulesOf } from './format/kept-forms'
import { listOf } from './list-of'
import type { Fact, Facts, FactsFor, Forms, Said, Text } from './text'

const placePattern = /\{(\w+)\}/g

/**
 * A sentence: a text with its places filled. Texts are plain data, so that they can be handed to a client component
 * and translated without code; the facts are checked against the places at compile time. What was said is whole:
 * it does not go into another text, because no other language puts its sentences together as this one does.
 * @throws Error when a place has no fact: a bug, not an input
 */
export function say<const T extends Text>(text: T, language: string, ...[facts]: FactsFor<T>): Said {
  return fill(text, language, facts ?? {})
}

/** As `say`, for texts that are found by a key at run time, where the compiler cannot check the places. */
export function fill(text: Text, language: string, facts: Facts): Said {
  return filled(text, language, facts) as Said
}

/**
 * A name that is made by a pattern, `Dough {letter}`, or a quantity, `{price} per {unit}`: it may stand in a place
 * of a sentence, as the name that somebody gave may. Never for a clause.
 * @throws Error when a place has no fact: a bug, not an input
 */
export function sayName<const T extends Text>(text: T, language: string, ...[facts]: FactsFor<T>): string {
  return filled(text, language, facts ?? {})
}

function filled(text: Text, language: string, facts: Facts): string {
  const chosen = typeof text === 'string' ? text : formOf(text, language, facts.count)
  return chosen.replace(placePattern, (_, name: string) => {
    const fact = facts[name]
    if (fact === undefined) throw new Error(`no fact for {${name}} in "${chosen}"`)
    return typeof fact === 'object' ? listOf(fact, language) : String(fact)
  })
}

/** The form for a number by the rules of the language (CLDR, as Intl.PluralRules has them). */
function formOf(text: Forms, language: string, count: Fact | undefined): string {
  if (typeof count !== 'number') throw new Error('a text with number forms needs a numeric fact `count`')
  return text[pluralRulesOf(language).select(count)] ?? text.other
}

/** A text with named places, `{count} loaves`, or its forms by number, chosen by the fact called `count`. */
export type Text = string | Forms
export type Forms = { one: string; other: string }

export type Facts = Record<string, string | number>

type Places<T extends string> = T extends `${string}{${infer Name}}${infer Rest}` ? Name | Places<Rest> : never
type PlacesOf<T extends Text> = T extends Forms ? Places<T['one']> | Places<T['other']> | 'count' : T extends string ? Places<T> : never

/** The facts that a text asks for; none when it has no places. */
export type FactsFor<T extends Text> = [PlacesOf<T>] extends [never] ? [] : [facts: { [K in PlacesOf<T>]: string | number }]

const placePattern = /\{(\w+)\}/g

/**
 * Fills a text's places with facts. Texts are plain data, so that they can be handed to a client component
 * and translated without code; the facts are checked against the places at compile time.
 * @throws Error when a place has no fact: a bug, not an input
 */
export function say<const T extends Text>(text: T, language: string, ...[facts]: FactsFor<T>): string {
  return fill(text, language, (facts ?? {}))
}

/** As `say`, for texts that are found by a key at run time, where the compiler cannot check the places. */
export function fill(text: Text, language: string, facts: Facts): string {
  const chosen = typeof text === 'string' ? text : text[formFor(language, facts.count)]
  return chosen.replace(placePattern, (_, name: string) => {
    const fact = facts[name]
    if (fact === undefined) throw new Error(`no fact for {${name}} in "${chosen}"`)
    return String(fact)
  })
}

function formFor(language: string, count: string | number | undefined): 'one' | 'other' {
  if (typeof count !== 'number') throw new Error('a text with number forms needs a numeric fact `count`')
  return new Intl.PluralRules(language).select(count) === 'one' ? 'one' : 'other'
}

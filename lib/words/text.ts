declare const places: unique symbol
declare const said: unique symbol

/**
 * A text with named places, `{count} loaves`: plain data, which can be handed to a client component. What stands
 * between the places, and their order, are a language's own; which places there are is part of the type.
 */
export type Template<P extends string> = string & { readonly [places]?: P }

/** The forms of a text by number, as CLDR names them. A language gives those that it has; `other` always. */
export type Forms<Other extends string = string> = {
  readonly [form in Exclude<Intl.LDMLPluralRule, 'other'>]?: string
} & { readonly other: Other }

export type Text = string | Forms

/** Whether a branch of the tree is the forms of one text; a group of texts may have a key `other` as well. */
export type IsForms<T> = T extends Forms
  ? [Exclude<keyof T, Intl.LDMLPluralRule>] extends [never]
    ? true
    : false
  : false

/** A text of the words at its place in the tree: one with forms wherever it speaks of a `{count}`. */
export type TextWith<P extends string> = [P] extends [never]
  ? string
  : 'count' extends P
    ? Template<P> | Forms<Template<P>>
    : Template<P>

/** The names of the places in a text as it is written. */
export type PlacesIn<T extends string> = T extends `${string}{${infer Name}}${infer Rest}`
  ? Name | PlacesIn<Rest>
  : never

type PlacesOfString<T extends string> = typeof places extends keyof T
  ? Exclude<T[typeof places], undefined> & string
  : PlacesIn<T>

/** The names of the places of a text; with forms by number also `count`, which chooses. */
export type PlacesOf<T extends Text> = T extends string
  ? PlacesOfString<T>
  : T extends Forms
    ? { [Form in keyof T]: T[Form] extends string ? PlacesOfString<T[Form]> : never }[keyof T] | 'count'
    : never

/** What was said: ready to be shown, and never a part of another sentence. */
export type Said = string & { readonly [said]: true }

/** What a place takes: a name, a date, a figure with its unit, a code, or several names; never a sentence. */
export type Fact = number | (string & { readonly [said]?: never }) | readonly string[]
export type Facts = Record<string, Fact>

/** The facts that a text asks for; none when it has no places. */
export type FactsFor<T extends Text> = [PlacesOf<T>] extends [never]
  ? []
  : [facts: { [Place in PlacesOf<T>]: Place extends 'count' ? number : Fact }]

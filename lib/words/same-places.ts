import type { IsForms, PlacesIn, PlacesOf, Text, TextWith } from './text'

/** What a tree of texts asks of every language: the same keys, and at each the same places. */
export type WordsOf<Tree> = {
  readonly [Key in keyof Tree]: IsText<Tree[Key]> extends true
    ? TextWith<PlacesOf<Extract<Tree[Key], Text>>>
    : WordsOf<Tree[Key]>
}

type IsText<T> = T extends string ? true : IsForms<T>

/** What no text is, so that the compiler says at the text what is wrong with it. */
type Wrong<What extends string> = { readonly wrong: What }

/** A text as a language gives it: whatever it is where it has these places. */
type Checked<P extends string, T, Lacks extends string = never> = T extends string
  ? [Exclude<PlacesIn<T>, P>] extends [never]
    ? [Exclude<P, PlacesIn<T> | Lacks>] extends [never]
      ? unknown
      : Wrong<`the place {${Exclude<P, PlacesIn<T> | Lacks>}} is missing`>
    : Wrong<`there is no place {${Exclude<PlacesIn<T>, P>}} here`>
  : Wrong<'here is one text, not several'>

/** A text or its forms by number, where the language has forms. A form but `other` may leave the number out. */
type CheckedText<P extends string, T> =
  IsForms<T> extends true
    ? 'count' extends P
      ? { readonly [Form in keyof T]: Checked<P, T[Form], Form extends 'other' ? never : 'count'> }
      : Wrong<'nothing is counted here, so there are no forms by number'>
    : Checked<P, T>

/** What a language's tree has to be beside the first one: each key, at each text the same places, and nothing else. */
export type SamePlaces<First, T> = {
  readonly [Key in keyof First]: Key extends keyof T
    ? IsText<First[Key]> extends true
      ? CheckedText<PlacesOf<Extract<First[Key], Text>>, T[Key]>
      : SamePlaces<First[Key], T[Key]>
    : unknown
} & { readonly [Key in Exclude<keyof T, keyof First>]: Wrong<'the first language has no such key'> }

import { listFormOf } from './format/kept-forms'

/**
 * Names one after another, as the language sets a list: 'milk, egg, sesame'. For names, figures and codes, never for
 * sentences or parts of one.
 */
export function listOf(names: Iterable<string>, language: string): string {
  return listFormOf(language).format(names)
}

import { typedNumber } from '../words/format/typed-number'
import { textOf } from './text-of'

/** A number typed in a form, in the bakery's locale, as `typedNumber` reads it. */
export function numberOf(form: FormData, name: string, locale: string): number | string | undefined {
  return typedNumber(textOf(form, name), locale)
}

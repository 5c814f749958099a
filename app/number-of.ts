import 'server-only'
import { typedNumber } from '@/lib/words/format/typed-number'
import { textOf } from './act'

/** A number typed in a form, in the bakery's locale, as `typedNumber` reads it. */
export function numberOf(form: FormData, name: string, locale: string): number | string | undefined {
  return typedNumber(textOf(form, name), locale)
}

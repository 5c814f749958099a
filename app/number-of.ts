import 'server-only'
import { textOf } from './act'
import { readDecimal } from './read-decimal'

/**
 * A number typed in a form, in the bakery's locale.
 * @returns undefined for an empty field; the text itself when it is no number, so that the schema says so at the field
 */
export function numberOf(form: FormData, name: string, locale: string): number | string | undefined {
  const typed = textOf(form, name).trim()
  if (typed === '') return undefined
  const text = readDecimal(typed, locale)
  return text === null ? typed : Number(text)
}

import { textOf } from './text-of'
import { readDecimal } from '../words/format/read-decimal'

/**
 * An amount typed in a form, in the bakery's locale, as plain decimal text that keeps every digit.
 * @returns undefined for an empty field; an empty text when it is no number, for the command to refuse at the field
 */
export function decimalTextOf(form: FormData, name: string, locale: string): string | undefined {
  const typed = textOf(form, name).trim()
  return typed === '' ? undefined : (readDecimal(typed, locale) ?? '')
}

import 'server-only'
import { decimalTextOf } from './decimal-text-of'

/**
 * A number typed in a form, in the bakery's locale.
 * @returns undefined for an empty field; the text itself when it is no number, so that the schema says so at the field
 */
export function numberOf(form: FormData, name: string, locale: string): number | string | undefined {
  const text = decimalTextOf(form, name, locale)
  return text !== undefined && /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text
}

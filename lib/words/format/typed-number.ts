import { readDecimal } from './read-decimal'

/**
 * A number as it was typed, in the bakery's locale.
 * @returns undefined for nothing typed; the text itself when it is no number, so that the schema says so at the field
 * @example typedNumber('62,5', 'en-DE') // 62.5
 */
export function typedNumber(text: string, locale: string): number | string | undefined {
  const typed = text.trim()
  if (typed === '') return undefined
  const decimal = readDecimal(typed, locale)
  return decimal === null ? typed : Number(decimal)
}

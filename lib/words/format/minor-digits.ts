import { numberFormOf } from './kept-forms'

/** Of the currencies in use: asking a form for its options takes longer than writing an amount with it. */
const known = new Map<string, number>()

/**
 * Digits that a currency has behind the mark: 2 for EUR, 0 for JPY.
 * @throws RangeError when it is not a code
 * Source: ISO 4217, by ECMA-402.
 */
export function minorDigits(currency: string): number {
  const held = known.get(currency)
  if (held !== undefined) return held
  const digits = numberFormOf('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 0
  known.set(currency, digits)
  return digits
}

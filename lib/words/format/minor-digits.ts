import { numberFormOf } from './kept-forms'

/**
 * Digits that a currency has behind the mark: 2 for EUR, 0 for JPY.
 * @throws RangeError when it is not a code
 * Source: ISO 4217, by ECMA-402.
 */
export function minorDigits(currency: string): number {
  return numberFormOf('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 0
}

import { numberFormOf } from './kept-forms'
import { minorDigits } from './minor-digits'
import { writeNumber } from './write-number'

export type MoneyForm = {
  locale: string
  /** ISO 4217 code; it decides how many minor units make one major unit. */
  currency: string
}

/**
 * An amount in minor units (cents, pence) as text, exact to the last unit, with a real minus (U+2212).
 * @param minor a whole number within ±(2^53 − 1)
 * @throws RangeError when it is not such a number, or the currency is not a code
 * Source: ECMA-402 (digits by ISO 4217, decimal texts formatted exactly).
 * @example formatMoneyMinor(123450, { locale: 'de-DE', currency: 'EUR' }) // '1.234,50\u00a0€'
 */
export function formatMoneyMinor(minor: number, { locale, currency }: MoneyForm): string {
  if (!Number.isSafeInteger(minor)) throw new RangeError(`not a whole number of minor units: ${String(minor)}`)
  // As an exponent and not divided: a division could round the last unit of a large amount.
  return writeNumber(numberFormOf(locale, { style: 'currency', currency, signDisplay: 'negative' }), `${String(minor)}E-${String(minorDigits(currency))}`)
}

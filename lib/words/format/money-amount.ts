import { numberFormOf } from './kept-forms'
import { minorDigits } from './minor-digits'
import { writeNumber } from './write-number'

export type MoneyForm = {
  locale: string
  /** ISO 4217 code; it decides how many digits an amount has. */
  currency: string
}

/**
 * An exact decimal amount as text, with its currency; never through a floating-point number.
 * @param amount decimal text in major units, '0.8125'
 * @param q.leastDigits digits after the mark at least, where amounts stand below each other; the currency's own unless given
 * @param q.mostDigits digits after the mark at most; never fewer than the currency has
 * @throws RangeError when the text is no decimal number, or the currency is not a code
 * Source: ECMA-402 (decimal texts are formatted exactly; digits by ISO 4217).
 * @example formatMoneyAmount('0.8125', { locale: 'en-GB', currency: 'EUR', mostDigits: 4 }) // '€0.8125'
 */
export function formatMoneyAmount(
  amount: string,
  q: MoneyForm & { leastDigits?: number; mostDigits?: number },
): string {
  if (!/^-?\d+(\.\d+)?$/.test(amount)) throw new RangeError(`not a decimal amount: ${amount}`)
  const least = q.leastDigits ?? minorDigits(q.currency)
  const form = numberFormOf(q.locale, {
    style: 'currency',
    currency: q.currency,
    minimumFractionDigits: least,
    maximumFractionDigits: Math.max(least, q.mostDigits ?? least),
  })
  return writeNumber(form, amount)
}

import { formatMoneyAmount, type MoneyForm } from './money-amount'

/** A tenth of the smallest coin of most currencies. */
const digits = 3

/**
 * What one loaf costs or differs by, to a tenth of a coin, as loaves differ by less than one.
 * @param amount decimal text in major units
 * @throws RangeError as formatMoneyAmount
 * @example formatLoafMoney('0.0536', { locale: 'en-GB', currency: 'EUR' }) // '€0.054'
 */
export function formatLoafMoney(amount: string, { locale, currency }: MoneyForm): string {
  return formatMoneyAmount(amount, { locale, currency, leastDigits: digits, mostDigits: digits })
}

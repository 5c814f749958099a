import { Decimal } from '../calc/cost/decimal'
import { gramsPerUnit, largeMassUnit, type MassUnits } from '../words/format/mass'
import { formatMoneyAmount } from '../words/format/money-amount'

/** Below this a price would lose its digits, or look like nothing, at the digits of its currency. */
const smallPrice = 0.1
const digitsOfSmall = 4

/**
 * The price of one kg or one lb, in the bakery's own unit, as text without the unit. Exact until it is shown.
 * @param perKg decimal text, major units per kg
 * @param q.mostDigits digits behind the mark at most; the currency's own unless given, and four for a small price
 * @throws RangeError as formatMoneyAmount
 * @example unitPrice('2', { locale: 'en-US', currency: 'USD', massUnits: 'ounces' }) // '$0.91', per lb
 */
export function unitPrice(
  perKg: string,
  q: { locale: string; currency: string; massUnits: MassUnits; mostDigits?: number },
): string {
  const perUnit = new Decimal(perKg).times(gramsPerUnit[largeMassUnit(q.massUnits)]).dividedBy(1000)
  return formatMoneyAmount(perUnit.toFixed(), {
    ...q,
    mostDigits: q.mostDigits ?? (perUnit.lessThan(smallPrice) ? digitsOfSmall : undefined),
  })
}

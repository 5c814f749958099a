import { Decimal } from '../../calc/cost/decimal'
import { gramsPerUnit, largeMassUnit, type MassUnits } from './mass'
import { formatMoneyAmount } from './money-amount'

/**
 * The price of one kg or one lb, in the bakery's own unit, as text without the unit.
 * @param perKg decimal text, major units per kg
 * @param q.mostDigits digits behind the mark at most
 * @throws RangeError as formatMoneyAmount
 * @example formatUnitPrice('2.2', { locale: 'en-US', currency: 'USD', massUnits: 'ounces' }) // '$1.00', per lb
 */
export function formatUnitPrice(perKg: string, q: { locale: string; currency: string; massUnits: MassUnits; mostDigits?: number }): string {
  const perUnit = new Decimal(perKg).times(gramsPerUnit[largeMassUnit(q.massUnits)]).dividedBy(1000)
  return formatMoneyAmount(perUnit.toFixed(), q)
}

import { CalcError } from '../error'
import { Decimal } from './decimal'

/**
 * Money to whole minor units, a half away from zero as on invoices. The one place where money is rounded.
 * @throws CalcError 'out-of-range' when it is not finite or beyond the whole numbers that a double holds
 */
export function roundToMinor(amountMinor: Decimal): number {
  const rounded = amountMinor.toDecimalPlaces(0, Decimal.ROUND_HALF_UP).toNumber()
  if (!Number.isSafeInteger(rounded)) throw new CalcError('out-of-range', { field: 'amountMinor', value: amountMinor.toString() })
  return rounded === 0 ? 0 : rounded
}

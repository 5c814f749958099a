import { CalcError } from '../error'
import type { Decimal } from './decimal'

/**
 * Demands a finite amount of money, not below `least`; null allows a loss of any size.
 * @throws CalcError 'not-finite' | 'out-of-range', with field and value
 */
export function mustBeAmount(field: string, amount: Decimal, least: number | null = 0): Decimal {
  if (!amount.isFinite()) throw new CalcError('not-finite', { field, value: amount.toString() })
  if (least !== null && amount.lessThan(least)) {
    throw new CalcError('out-of-range', { field, value: amount.toString(), min: least })
  }
  return amount
}

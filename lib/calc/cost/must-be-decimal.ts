import { CalcError } from '../error'
import { Decimal } from './decimal'

const PLAIN = /^-?\d{1,15}(\.\d{1,12})?$/

/**
 * Reads a decimal string such as '1234.5'. No exponents, signs of thousands or currency.
 * @param least smallest value allowed
 * @throws CalcError 'not-finite' when it is no such string; 'out-of-range' below `least`
 */
export function mustBeDecimal(field: string, text: string, least = 0): Decimal {
  if (!PLAIN.test(text)) throw new CalcError('not-finite', { field, value: text })
  const value = new Decimal(text)
  if (value.lessThan(least)) throw new CalcError('out-of-range', { field, value: text, min: least })
  return value
}

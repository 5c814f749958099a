import type { Decimal } from './decimal'

/** As many decimals as mustBeDecimal reads, so that an answer can be asked with again. */
const MOST_DECIMALS = 12

/** A decimal as text, plain and without exponent: '107.71875'. Beyond twelve decimals it is rounded, half to even. */
export function decimalText(value: Decimal): string {
  return value.toDecimalPlaces(MOST_DECIMALS).toFixed()
}

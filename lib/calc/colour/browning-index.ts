import { CalcError } from '../error'
import { mustBeLab } from './must-be-lab'
import type { Lab } from './types'

/**
 * Browning index: x = (a + 1.75 L) / (5.645 L + a − 3.012 b), BI = 100 (x − 0.31) / d.
 * x stands for the chromaticity x of the colour, 0.31 for that of white; published papers divide by 0.17 or by 0.172.
 * @param colour CIELAB, lightness 0 to 100, a and b within ±200; @param divisor d, '0.17' or '0.172'
 * @returns no unit; may be negative for bluish colours
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'no-browning-index' where the divisor of x is not
 * above zero (very yellow and dark, or black)
 * Source: Palou et al. (1999), Journal of Food Science 64, from memory.
 * @example browningIndex({ lightness: 60, a: 10, b: 30 }, '0.17') // 79.5
 */
export function browningIndex(colour: Lab, divisor: '0.17' | '0.172'): number {
  const { lightness, a, b } = mustBeLab('', colour)
  const below = 5.645 * lightness + a - 3.012 * b
  // under a thousandth of a unit x is nothing but rounding of the reading
  if (below < 1e-3)
    throw new CalcError('not-possible', { field: 'lightness', value: lightness, reason: 'no-browning-index' })
  return (100 * ((a + 1.75 * lightness) / below - 0.31)) / Number(divisor)
}

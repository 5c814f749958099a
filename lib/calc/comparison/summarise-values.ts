import { mustBeReading, mustHaveAtLeast } from '../checks'

export type ValueSummary = {
  count: number
  /** Mean minus the origin, to full precision also where values have many leading digits in common. */
  offset: number
  mean: number
  /** About the mean, count − 1 df. */
  sumSquares: number
}

/**
 * Count, mean and sum of squares about the mean, in two passes from an origin near the values.
 * @param values one or more, ±1e100; @param origin taken off every value first; the first value where none is given
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: Chan, Golub & LeVeque (1983), The American Statistician 37 (corrected two-pass algorithm).
 * @example summariseValues('values', [1, 2, 3]) // { count: 3, offset: 1, mean: 2, sumSquares: 2 }
 */
export function summariseValues(field: string, values: readonly number[], origin = values[0] ?? 0): ValueSummary {
  const count = mustHaveAtLeast(field, values, 1).length
  const shifted = values.map((value, i) => mustBeReading(`${field}[${i}]`, value) - origin)
  const first = shifted.reduce((sum, value) => sum + value, 0) / count
  const offset = first + shifted.reduce((sum, value) => sum + (value - first), 0) / count
  const left = shifted.reduce((sum, value) => sum + (value - offset), 0)
  const sumSquares = Math.max(0, shifted.reduce((sum, value) => sum + (value - offset) ** 2, 0) - (left * left) / count)
  return { count, offset, mean: origin + offset, sumSquares }
}

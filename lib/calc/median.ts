import { mustBeWithin, mustHaveAtLeast } from './checks'

/**
 * Median: the middle one in order of size, or the mean of the two in the middle.
 * @param values at least one, finite
 * @throws CalcError 'empty' | 'not-finite'
 * Source: definition.
 * @example median([3, 1, 2]) // 2
 */
export function median(values: readonly number[]): number {
  mustHaveAtLeast('values', values, 1)
  const sorted = values.map((value, i) => mustBeWithin(`values[${i}]`, value)).sort((a, b) => a - b)
  const middle = sorted.length / 2
  return (sorted[Math.ceil(middle) - 1]! + sorted[Math.floor(middle)]!) / 2
}

import { mustBeWithin, mustHaveAtLeast } from './checks'

/**
 * Median: the middle one in order of size, or the mean of the two in the middle.
 * @param values at least one, finite; @param field what a refusal calls them
 * @throws CalcError 'empty' | 'not-finite'
 * Source: definition.
 * @example median([3, 1, 2]) // 2
 */
export function median(values: readonly number[], field = 'values'): number {
  mustHaveAtLeast(field, values, 1)
  const sorted = values.map((value, i) => mustBeWithin(`${field}[${i}]`, value)).sort((a, b) => a - b)
  const middle = sorted.length / 2
  return (sorted[Math.ceil(middle) - 1]! + sorted[Math.floor(middle)]!) / 2
}

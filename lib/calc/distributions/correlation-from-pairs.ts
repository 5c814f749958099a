import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'

/**
 * A correlation matrix from its pairs in the order 1-2, 1-3, …, 2-3, …: 1 on the diagonal, symmetrical.
 * @param pairs k (k − 1) / 2 numbers, −1 to 1, k ≥ 2
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'; 'wrong-shape' when no k has so many pairs
 * Source: the definition.
 * @example correlationFromPairs([0.5]) // [[1, 0.5], [0.5, 1]]
 */
export function correlationFromPairs(pairs: readonly number[]): number[][] {
  mustHaveAtLeast('pairs', pairs, 1)
  const k = (1 + Math.sqrt(1 + 8 * pairs.length)) / 2
  if (!Number.isInteger(k)) throw new CalcError('wrong-shape', { field: 'pairs', value: pairs.length })
  const matrix = Array.from({ length: k }, (_, i) => Array.from({ length: k }, (_, j): number => (i === j ? 1 : 0)))
  let next = 0
  for (let i = 0; i < k; i++) {
    for (let j = i + 1; j < k; j++) {
      const value = mustBeWithin(`pairs[${next}]`, pairs[next]!, { min: -1, max: 1 })
      matrix[i]![j] = value
      matrix[j]![i] = value
      next++
    }
  }
  return matrix
}

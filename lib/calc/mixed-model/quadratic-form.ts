import type { Matrix } from './types'

/**
 * aᵀ M b.
 * @param a k values; @param matrix k × m by rows; @param b m values
 * @example quadraticForm([1, 2], [[1, 0], [0, 1]], [1, 2]) // 5
 */
export function quadraticForm(a: readonly number[], matrix: Matrix, b: readonly number[]): number {
  return a.reduce(
    (sum, value, i) => (value === 0 ? sum : sum + value * matrix[i]!.reduce((inner, m, j) => inner + m * b[j]!, 0)),
    0,
  )
}

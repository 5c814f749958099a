import type { Matrix } from './types'

/**
 * Trace of a product of two matrices, without forming the product: Σ aᵢⱼ bⱼᵢ.
 * @param a k × m by rows; @param b m × k
 * @example traceOfProduct([[1, 2], [3, 4]], [[1, 0], [0, 1]]) // 5
 */
export function traceOfProduct(a: Matrix, b: Matrix): number {
  let sum = 0
  a.forEach((row, i) => row.forEach((value, j) => (sum += value * b[j]![i]!)))
  return sum
}

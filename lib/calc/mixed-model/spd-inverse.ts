import { cholesky } from '../cholesky'
import type { Matrix } from './types'

/**
 * Inverse of a symmetrical positive definite matrix, and the logarithm of its determinant, by Cholesky.
 * @param matrix k × k, k ≥ 0; only the lower triangle is read
 * @throws CalcError 'not-possible' with reason 'not-definite' when a pivot falls to 1e-13 of its diagonal or less
 * Source: Golub & Van Loan, Matrix Computations, 4th ed. (2013), section 4.2.
 * @example spdInverse([[4]]) // { inverse: [[0.25]], logDet: 1.386 }
 */
export function spdInverse(matrix: Matrix): { inverse: number[][]; logDet: number } {
  const k = matrix.length
  const lower = cholesky({ matrix, field: 'matrix', leastPivotShare: 1e-13 })
  const logDet = lower.reduce((sum, row, i) => sum + 2 * Math.log(row[i]!), 0)
  // columns of the inverse of the triangle, then its square
  const half = matrix.map(() => new Array<number>(k).fill(0))
  for (let j = 0; j < k; j++) {
    for (let i = j; i < k; i++) {
      let sum = i === j ? 1 : 0
      for (let m = j; m < i; m++) sum -= lower[i]![m]! * half[m]![j]!
      half[i]![j] = sum / lower[i]![i]!
    }
  }
  const inverse = matrix.map(() => new Array<number>(k).fill(0))
  for (let i = 0; i < k; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0
      for (let m = i; m < k; m++) sum += half[m]![i]! * half[m]![j]!
      inverse[i]![j] = sum
      inverse[j]![i] = sum
    }
  }
  return { inverse, logDet }
}

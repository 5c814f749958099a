import { CalcError } from './error'

/**
 * Lower triangle L of a symmetrical positive definite matrix, L Lᵀ = A.
 * @param matrix k × k, k ≥ 0; only the lower triangle is read
 * @param leastPivotShare a pivot at or below this share of its diagonal is none, ≥ 0
 * @throws CalcError 'not-possible' with reason 'not-definite' and the row
 * Source: Golub & Van Loan, Matrix Computations, 4th ed. (2013), section 4.2.
 * @example cholesky({ matrix: [[1, 0.6], [0.6, 1]], field: 'matrix', leastPivotShare: 1e-13 }) // [[1, 0], [0.6, 0.8]]
 */
export function cholesky(q: {
  matrix: readonly (readonly number[])[]
  field: string
  leastPivotShare: number
}): number[][] {
  const { matrix, field, leastPivotShare } = q
  const lower = matrix.map(() => new Array<number>(matrix.length).fill(0))
  for (let i = 0; i < matrix.length; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]!
      for (let m = 0; m < j; m++) sum -= lower[i]![m]! * lower[j]![m]!
      if (i === j && !(sum > leastPivotShare * matrix[i]![i]!))
        throw new CalcError('not-possible', { field, value: i, reason: 'not-definite' })
      lower[i]![j] = i === j ? Math.sqrt(sum) : sum / lower[j]![j]!
    }
  }
  return lower
}

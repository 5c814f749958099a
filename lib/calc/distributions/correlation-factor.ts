import { mustBeWithin, mustMatchLength } from '../checks'
import { cholesky } from '../cholesky'

const ROUNDING = 1e-12

/**
 * Lower triangle L of a correlation matrix R, L Lᵀ = R.
 * @param correlation k × k, by rows, positive definite, 1 on the diagonal, symmetrical; k ≥ 1
 * @throws CalcError 'not-finite' | 'out-of-range' | 'wrong-shape'; 'not-possible' with reason 'not-definite'
 * Source: Cholesky's method, Golub & Van Loan (2013), Matrix Computations, 4.2.
 * @example correlationFactor([[1, 0.6], [0.6, 1]]) // [[1, 0], [0.6, 0.8]]
 */
export function correlationFactor(correlation: readonly (readonly number[])[]): number[][] {
  const k = correlation.length
  correlation.forEach((row, i) => mustMatchLength(`correlation[${i}]`, row, k))
  for (let i = 0; i < k; i++) {
    for (let j = 0; j <= i; j++) {
      const field = `correlation[${i}][${j}]`
      const value = mustBeWithin(
        field,
        correlation[i]![j]!,
        i === j ? { min: 1 - ROUNDING, max: 1 + ROUNDING } : { min: -1, max: 1 },
      )
      mustBeWithin(`correlation[${j}][${i}]`, correlation[j]![i]!, { min: value - ROUNDING, max: value + ROUNDING })
    }
  }
  return cholesky({ matrix: correlation, field: 'correlation', leastPivotShare: 1e-10 })
}

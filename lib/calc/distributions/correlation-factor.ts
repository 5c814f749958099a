import { mustBeWithin, mustMatchLength } from '../checks'
import { CalcError } from '../error'

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
  const lower = correlation.map(() => new Array<number>(k).fill(0))
  for (let i = 0; i < k; i++) {
    for (let j = 0; j <= i; j++) {
      const field = `correlation[${i}][${j}]`
      const value = mustBeWithin(field, correlation[i]![j]!, i === j ? { min: 1 - ROUNDING, max: 1 + ROUNDING } : { min: -1, max: 1 })
      mustBeWithin(`correlation[${j}][${i}]`, correlation[j]![i]!, { min: value - ROUNDING, max: value + ROUNDING })
      let sum = value
      for (let m = 0; m < j; m++) sum -= lower[i]![m]! * lower[j]![m]!
      if (i === j && sum <= 1e-10) throw new CalcError('not-possible', { field: 'correlation', value: i, reason: 'not-definite' })
      lower[i]![j] = i === j ? Math.sqrt(sum) : sum / lower[j]![j]!
    }
  }
  return lower
}

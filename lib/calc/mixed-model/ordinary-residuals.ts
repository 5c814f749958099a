import { spdInverse } from './spd-inverse'

/**
 * Ordinary least squares by the normal equations, twice, so that what is left over is exact to rounding; the mixed model
 * is then fitted to that remainder, and a large common part costs no digits.
 * @param x n × p by rows, of full rank; @param y n values
 * @throws CalcError 'not-possible' with reason 'not-definite'
 * Source: iterative refinement, Golub & Van Loan, Matrix Computations, 4th ed. (2013), section 5.3.8.
 */
export function ordinaryResiduals(q: { x: readonly (readonly number[])[]; y: readonly number[] }): {
  coefficients: number[]
  residuals: number[]
} {
  const columns = q.x[0]!.map((_, j) => j)
  const { inverse } = spdInverse(
    columns.map((i) => columns.map((j) => (j > i ? 0 : q.x.reduce((sum, row) => sum + row[i]! * row[j]!, 0)))),
  )
  const coefficients = columns.map(() => 0)
  let residuals = [...q.y]
  for (let round = 0; round < 2; round++) {
    const crossed = columns.map((j) => q.x.reduce((sum, row, i) => sum + row[j]! * residuals[i]!, 0))
    const more = inverse.map((row) => row.reduce((sum, value, j) => sum + value * crossed[j]!, 0))
    more.forEach((value, j) => (coefficients[j]! += value))
    residuals = residuals.map((value, i) => value - q.x[i]!.reduce((sum, own, j) => sum + own * more[j]!, 0))
  }
  return { coefficients, residuals }
}

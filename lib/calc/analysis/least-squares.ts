import { mustBeWithin, mustHaveAtLeast, mustMatchLength } from '../checks'
import { CalcError } from '../error'

/** A column that keeps less than this share of its length after the columns before it counts as made up of them. */
const RANK_TOLERANCE = 1e-9
/** Multiplications that are still a matter of seconds. */
const MOST_WORK = 2e9

export type LeastSquaresFit = {
  coefficients: number[]
  /** Qᵀy: the squares of a run of columns add up to their sum of squares after all columns before them. */
  effects: number[]
  residualSumSquares: number
  residualDf: number
  /** (XᵀX)⁻¹ */
  unscaledCovariance: number[][]
}

/**
 * Least squares by Householder reflections, columns in the order given.
 * @param x n × p, by rows, n ≥ p ≥ 1; @param y n values
 * @throws CalcError 'empty' | 'wrong-shape' | 'not-finite'; 'not-possible' with reason 'rank-deficient' and the column, or
 *   'too-large' when n p² is above 2e9
 * Source: Golub & Van Loan, Matrix Computations, 4th ed. (2013), algorithms 5.2.1 and 5.3.2.
 */
export function leastSquares(q: { x: readonly (readonly number[])[]; y: readonly number[] }): LeastSquaresFit {
  mustHaveAtLeast('x', q.x, 1)
  mustMatchLength('y', q.y, q.x.length)
  const n = q.x.length
  const p = mustHaveAtLeast('x[0]', q.x[0] ?? [], 1).length
  if (n * p * p > MOST_WORK)
    throw new CalcError('not-possible', { field: 'x', value: n * p * p, max: MOST_WORK, reason: 'too-large' })
  if (n < p) throw new CalcError('wrong-shape', { field: 'x', value: n, min: p })
  q.x.forEach((row, i) => {
    mustMatchLength(`x[${i}]`, row, p)
    row.forEach((v, j) => mustBeWithin(`x[${i}][${j}]`, v))
  })
  const r = q.x.map((row) => [...row])
  const effects = q.y.map((v, i) => mustBeWithin(`y[${i}]`, v))
  const at = (i: number, j: number) => r[i]![j]!

  for (let j = 0; j < p; j++) {
    const whole = norm(q.x.map((row) => row[j]!))
    const below = r.slice(j).map((row) => row[j]!)
    const length = norm(below)
    if (length <= RANK_TOLERANCE * whole) {
      throw new CalcError('not-possible', { field: 'x', value: j, reason: 'rank-deficient' })
    }
    const corner = below[0]! > 0 ? -length : length
    const v = [below[0]! - corner, ...below.slice(1)]
    const scale = 2 / v.reduce((sum, value) => sum + value * value, 0)
    for (let k = j; k < p; k++) {
      const dot = v.reduce((sum, value, i) => sum + value * at(j + i, k), 0) * scale
      v.forEach((value, i) => (r[j + i]![k]! -= dot * value))
    }
    const dot = v.reduce((sum, value, i) => sum + value * effects[j + i]!, 0) * scale
    v.forEach((value, i) => (effects[j + i]! -= dot * value))
  }

  const inverse = upperInverse(r, p)
  const coefficients = inverse.map((row) => row.reduce((sum, value, j) => sum + value * effects[j]!, 0))
  const unscaledCovariance = inverse.map((a) => inverse.map((b) => a.reduce((sum, value, j) => sum + value * b[j]!, 0)))
  const residualSumSquares = effects.slice(p).reduce((sum, value) => sum + value * value, 0)
  return { coefficients, effects, residualSumSquares, residualDf: n - p, unscaledCovariance }
}

function norm(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0))
}

/** Inverse of the upper triangle of the first p rows. */
function upperInverse(r: readonly (readonly number[])[], p: number): number[][] {
  const inverse = Array.from({ length: p }, () => new Array<number>(p).fill(0))
  for (let j = 0; j < p; j++) {
    for (let i = j; i >= 0; i--) {
      let sum = i === j ? 1 : 0
      for (let k = i + 1; k <= j; k++) sum -= r[i]![k]! * inverse[k]![j]!
      inverse[i]![j] = sum / r[i]![i]!
    }
  }
  return inverse
}

import { fTail } from '../distributions/f-tail'
import type { KenwardRoger } from './kenward-roger-covariance'
import { matrixProduct } from './matrix-product'
import { quadraticForm } from './quadratic-form'
import { spdInverse } from './spd-inverse'
import { traceOfProduct } from './trace-of-product'

/** Below it a difference is rounding: both sides of a quotient vanish together where the denominator has 2 df. */
const VANISHED = 1e-10

/**
 * Joint F test of one or more contrasts after Kenward and Roger: scaled Wald F on the adjusted covariance, with the
 * denominator df and the scale that match its first two moments.
 * @param weights of each contrast, independent rows; @param coefficients of the columns; @param residualVariance σ²
 * @returns numerator and denominator df, F with its scale, its upper tail; null where the moments have no F distribution
 * Source: Kenward & Roger (1997), Biometrics 53, section 3.
 */
export function kenwardRogerTest(q: {
  weights: readonly (readonly number[])[]
  coefficients: readonly number[]
  kenwardRoger: KenwardRoger
  residualVariance: number
}): { df1: number; df2: number; f: number; p: number } | null {
  const { covariance, slopes, adjusted, varianceCovariance } = q.kenwardRoger
  const l = q.weights.length
  const columns = covariance.map((_, j) => q.weights.map((row) => row[j]!))
  const inverse = spdInverse(matrixProduct(q.weights, covariance, columns)).inverse
  // Θ = L(LᵀΦL)⁻¹Lᵀ always meets ΦPΦ, so its traces are those of ℓ × ℓ matrices
  const parts = slopes.map((slope) => matrixProduct(inverse, q.weights, slope, columns))
  const traces = parts.map((part) => part.reduce((sum, row, i) => sum + row[i]!, 0))
  const over = (value: (i: number, j: number) => number) =>
    varianceCovariance.reduce(
      (sum, row, i) => sum + row.reduce((inner, weight, j) => inner + weight * value(i, j), 0),
      0,
    )
  const a1 = over((i, j) => traces[i]! * traces[j]!)
  const a2 = over((i, j) => traceOfProduct(parts[i]!, parts[j]!))

  const b = (a1 + 6 * a2) / (2 * l)
  const g = ((l + 1) * a1 - (l + 4) * a2) / ((l + 2) * a2)
  const base = 3 * l + 2 * (1 - g)
  const rest = 1 - a2 / l
  const [v0, v1, v2] = [1 + (g / base) * b, 1 - ((l - g) / base) * b, 1 - ((l + 2 - g) / base) * b]
  const quotient = Math.abs(rest) < VANISHED && Math.abs(v1) < VANISHED ? 1 : rest / v1
  const rho = (quotient * quotient * v0) / (l * v2)
  const df2 = Math.abs(v2) < VANISHED ? 4 : 4 + (l + 2) / (l * rho - 1)
  if (!(df2 > 0 && Number.isFinite(df2))) return null
  const scale = Math.abs(df2 - 2) < 1e-2 ? 1 : (df2 * rest) / (df2 - 2)
  const estimates = q.weights.map((row) => row.reduce((sum, value, j) => sum + value * q.coefficients[j]!, 0))
  const wald =
    quadraticForm(estimates, spdInverse(matrixProduct(q.weights, adjusted, columns)).inverse, estimates) /
    (l * q.residualVariance)
  const f = scale * wald
  if (!(f >= 0)) return null
  return { df1: l, df2, f, p: fTail({ f, df1: l, df2, tail: 'upper' }) }
}

import { leastSquares } from '../analysis/least-squares'
import { median } from '../median'
import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

/** Residuals beyond so many spreads lose weight: 95 % as good as least squares when nothing is wrong. */
const TUNING = 1.345
/** Median of |z| for a standard normal z. */
const NORMAL_MEDIAN = 0.6744897501960817
const MOST_ROUNDS = 500
const SETTLED = 1e-10
/** A spread below this part of what was read is rounding, not scatter. */
const LEAST_SPREAD_SHARE = 1e-9

export type HuberFit = {
  coefficients: number[]
  /** 1 counts in full; below, the reading lies off the others. */
  weights: number[]
  residuals: number[]
  /** Robust standard deviation of the residuals: median of |r| over 0.6745. */
  spread: number
}

/**
 * Linear fit that one bad reading cannot pull away: Huber's M-estimate with the spread from the median of the absolute
 * residuals, by least squares weighted again and again.
 * @param x n × p, by rows, n > p ≥ 1; y n values
 * @throws CalcError as leastSquares; 'no-convergence' after 500 rounds
 * Source: P. J. Huber (1981), Robust statistics, sections 7.7 and 7.8.
 */
export function huberFit(q: { x: readonly (readonly number[])[]; y: readonly number[] }): HuberFit {
  const p = q.x[0]?.length ?? 0
  if (q.x.length <= p) throw new CalcError('wrong-shape', { field: 'x', value: q.x.length, min: p + 1 })
  const floor =
    LEAST_SPREAD_SHARE *
    median(
      q.y.map((value, i) => Math.abs(mustBeWithin(`y[${i}]`, value))),
      'y',
    )
  let coefficients = leastSquares(q).coefficients
  let residuals = residualsOf(q, coefficients)
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const spread = Math.max(median(residuals.map(Math.abs), 'y') / NORMAL_MEDIAN, floor)
    const weights = residuals.map((r) => (Math.abs(r) <= TUNING * spread ? 1 : (TUNING * spread) / Math.abs(r)))
    const roots = weights.map(Math.sqrt)
    coefficients = leastSquares({
      x: q.x.map((row, i) => row.map((value) => value * roots[i]!)),
      y: q.y.map((value, i) => value * roots[i]!),
    }).coefficients
    const next = residualsOf(q, coefficients)
    const moved = Math.hypot(...next.map((r, i) => r - residuals[i]!))
    const isStill = moved <= SETTLED * Math.hypot(...residuals) + floor * Math.sqrt(next.length)
    residuals = next
    if (isStill) return { coefficients, weights, residuals, spread }
  }
  throw new CalcError('no-convergence', { field: 'y', value: MOST_ROUNDS })
}

function residualsOf(
  q: { x: readonly (readonly number[])[]; y: readonly number[] },
  coefficients: readonly number[],
): number[] {
  return q.y.map((value, i) => value - q.x[i]!.reduce((sum, xij, j) => sum + xij * coefficients[j]!, 0))
}

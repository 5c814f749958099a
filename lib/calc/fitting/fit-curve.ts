import { leastSquares } from '../analysis/least-squares'
import { mustBeWithin, mustHaveAtLeast, mustMatchLength } from '../checks'
import { CalcError } from '../error'

const MOST_ROUNDS = 300
const LEAST_DAMPING = 1e-8
const MOST_DAMPING = 1e12
/** A step, or a gain in the sum of squares, below this part of what is there no longer changes anything. */
const SETTLED = 1e-14

/** Value of a curve at one x, and its slopes against each parameter. */
export type CurvePoint = { value: number; gradient: readonly number[] }

export type CurveFit = {
  parameters: number[]
  /** s² (JᵀJ)⁻¹ at the fit. */
  covariance: number[][]
  residualSumSquares: number
  residualDf: number
}

/**
 * Fits a curve to points by least squares: Levenberg–Marquardt with the parameters scaled by their columns.
 * @param x, y n points each, n > p; start: p parameters from which the curve is already like the points
 * @throws CalcError 'wrong-shape' | 'not-finite' | 'empty'; 'not-possible' with reason 'curve-not-determined' when the
 *   points leave a parameter open; 'no-convergence' after 300 rounds
 * Source: J. J. Moré (1978), The Levenberg–Marquardt algorithm; D. M. Bates & D. G. Watts (1988), Nonlinear regression
 *   analysis, section 2.2 (covariance).
 */
export function fitCurve(q: {
  x: readonly number[]
  y: readonly number[]
  start: readonly number[]
  curve: (x: number, parameters: readonly number[]) => CurvePoint
}): CurveFit {
  mustMatchLength('y', q.y, q.x.length)
  const p = mustHaveAtLeast('start', q.start, 1).length
  mustHaveAtLeast('x', q.x, p + 1)
  const sumY2 = q.y.reduce((sum, value, i) => sum + mustBeWithin(`y[${i}]`, value) ** 2, 0)
  let at = linearised(q, q.start)
  if (at === null) throw new CalcError('not-finite', { field: 'start', value: q.start.join(' ') })
  let damping = 1e-3
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const step = dampedStep(at, damping)
    const next = linearised(
      q,
      at.parameters.map((value, j) => value + step[j]!),
    )
    if (next === null || next.sumSquares > at.sumSquares) {
      damping *= 10
      if (damping <= MOST_DAMPING) continue
      return settled(at, q.x.length - p)
    }
    const gain = at.sumSquares - next.sumSquares
    const isStill = step.every((value, j) => Math.abs(value) <= SETTLED * Math.abs(next.parameters[j]!))
    at = next
    damping = Math.max(LEAST_DAMPING, damping / 10)
    if (isStill || at.sumSquares <= SETTLED * SETTLED * sumY2 || (gain <= SETTLED * at.sumSquares && damping < 1e-6)) {
      return settled(at, q.x.length - p)
    }
  }
  throw new CalcError('no-convergence', { field: 'start', value: MOST_ROUNDS })
}

type Linearised = {
  parameters: readonly number[]
  slopes: (readonly number[])[]
  residuals: number[]
  sumSquares: number
}

function linearised(q: Parameters<typeof fitCurve>[0], parameters: readonly number[]): Linearised | null {
  const slopes: (readonly number[])[] = []
  const residuals: number[] = []
  let sumSquares = 0
  for (let i = 0; i < q.x.length; i++) {
    const { value, gradient } = q.curve(q.x[i]!, parameters)
    const residual = q.y[i]! - value
    if (!Number.isFinite(residual) || !gradient.every(Number.isFinite)) return null
    slopes.push(gradient)
    residuals.push(residual)
    sumSquares += residual * residual
  }
  return { parameters, slopes, residuals, sumSquares }
}

/** Normal equations in units of the columns' lengths, held back by the damping: a rough step will do, the fit's own end is exact. */
function dampedStep(at: Linearised, damping: number): number[] {
  const p = at.parameters.length
  const cross = Array.from({ length: p }, () => new Array<number>(p).fill(0))
  const along = new Array<number>(p).fill(0)
  at.slopes.forEach((row, i) => {
    for (let j = 0; j < p; j++) {
      along[j]! += row[j]! * at.residuals[i]!
      for (let k = 0; k < p; k++) cross[j]![k]! += row[j]! * row[k]!
    }
  })
  const lengths = cross.map((row, j) => Math.sqrt(row[j]!) || 1)
  const { coefficients } = leastSquares({
    x: cross.map((row, j) => row.map((value, k) => value / (lengths[j]! * lengths[k]!) + (j === k ? damping : 0))),
    y: along.map((value, j) => value / lengths[j]!),
  })
  return coefficients.map((value, j) => value / lengths[j]!)
}

function settled(at: Linearised, residualDf: number): CurveFit {
  try {
    const { unscaledCovariance } = leastSquares({ x: at.slopes, y: at.residuals })
    const variance = at.sumSquares / residualDf
    return {
      parameters: [...at.parameters],
      covariance: unscaledCovariance.map((row) => row.map((value) => value * variance)),
      residualSumSquares: at.sumSquares,
      residualDf,
    }
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'rank-deficient') {
      throw new CalcError('not-possible', { field: 'y', reason: 'curve-not-determined' })
    }
    throw error
  }
}

import { CalcError } from '../error'
import { crossProducts } from './cross-products'
import { minimiseReml } from './minimise-reml'
import { mustBeIdentified } from './must-be-identified'
import { ordinaryResiduals } from './ordinary-residuals'
import { refuseIndefinite } from './refuse-indefinite'
import type { CrossProducts, Design } from './types'

/** A spread at or below this share of the largest value is rounding, not variation. */
const ZERO_VARIANCE = 1e-14
/** Size of what is left of the fixed part beside the residual spread: its square costs so many digits of the residual. */
const LEFT_OVER = 10
const MOST_ROUNDS = 6

export type SettledVariances = {
  /** With y less all of the fixed part but a remainder, in units of `unit`. */
  cross: CrossProducts
  /** In the order of cross.names. */
  ratios: number[]
  remlValue: number
  /** The fixed part already taken out, in the unit of y; the remainder comes from the fit to `cross`. */
  coefficients: number[]
  unit: number
}

/**
 * Variance ratios by REML. The criterion is minimised on y less the fixed part; where that part, found by ordinary least
 * squares first, turns out to be far from the weighted one, it is taken out again and the minimum found from where it was:
 * a variance far above the residual one then costs no digits.
 * @param design of full rank; @param y n values; @param random levels of one or two factors
 * @throws CalcError as mustBeIdentified, crossProducts and minimiseReml; 'not-possible' with reason 'zero-variance'
 * Source: iterative refinement, Golub & Van Loan, Matrix Computations, 4th ed. (2013), section 5.3.8.
 */
export function settleVariances(q: {
  design: Design
  y: readonly number[]
  random: readonly { name: string; levels: readonly string[] }[]
}): SettledVariances {
  const { x } = q.design
  const origin = q.y[0]!
  const ordinary = ordinaryResiduals({ x, y: q.y.map((value) => value - origin) })
  const unit = spreadOf(ordinary.residuals, q.y)
  const coefficients = ordinary.coefficients.map((value, j) => (j === 0 ? value + origin : value))
  let left = ordinary.residuals.map((value) => value / unit)
  let start: number[] | undefined
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const cross = crossProducts({ u: x.map((row, i) => [...row, left[i]!]), random: q.random })
    if (round === 0) mustBeIdentified(cross, q.design)
    const { ratios, criterion, settled } = refuseIndefinite('zero-variance', () => minimiseReml(cross, start))
    const more = criterion.moments.coefficients
    const fixed = x.map((row) => row.reduce((sum, own, j) => sum + own * more[j]!, 0))
    const size = Math.sqrt(fixed.reduce((sum, value) => sum + value * value, 0) / fixed.length)
    const residualSd = Math.sqrt(criterion.moments.residual / (cross.n - cross.p))
    if (settled && size <= LEFT_OVER * residualSd)
      return { cross, ratios, remlValue: criterion.value, coefficients, unit }
    more.forEach((value, j) => (coefficients[j]! += unit * value))
    left = left.map((value, i) => value - fixed[i]!)
    start = ratios
  }
  throw new CalcError('no-convergence', { field: 'rows', value: MOST_ROUNDS })
}

/** Root mean square of what the fixed part leaves over. */
function spreadOf(residuals: readonly number[], y: readonly number[]): number {
  const largest = y.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const spread = Math.sqrt(residuals.reduce((sum, value) => sum + value * value, 0) / residuals.length)
  if (spread <= Math.max(ZERO_VARIANCE * largest, 1e-100))
    throw new CalcError('not-possible', { field: 'rows', value: spread, reason: 'zero-variance' })
  return spread
}

import { CalcError } from '../error'
import { leastSquares } from '../analysis/least-squares'
import { bracketedRoot } from '../distributions/bracketed-root'
import { halfDoseGrid } from './half-dose-grid'
import { residualOf } from './residual-of'
import { saturatingProfile } from './saturating-profile'
import type { CurveFit, DoseGroups } from './types'

/**
 * Saturating curve by least squares: the residual is followed along the dose of half the effect on a fixed grid, and
 * the root of its slope found in the best interval, so that the work is bounded. Covariance by Gauss and Newton.
 * @param fixedE0 value without any dose, where it is given and not estimated
 * @throws CalcError 'not-possible' with reason 'few-doses', 'no-residual-df' or 'zero-variance'; 'no-convergence' with
 * reason 'no-bend' (the best curve is a straight line), 'step' (all of the effect is there at the lowest dose) or 'flat'
 * Source: Bates & Watts (1988), Nonlinear Regression Analysis and Its Applications, chapters 2 and 3.
 */
export function fitSaturating(data: DoseGroups, fixedE0?: number): CurveFit {
  const fixed = fixedE0 === undefined ? null : fixedE0 - data.origin
  const free = fixed === null
  // where e0 is given, dough without the ingredient tells nothing of the rest
  const idle = !free && data.groups[0]!.dose === 0 ? 1 : 0
  const residual = residualOf(data, free ? 3 : 2, free ? 3 : 2 + idle)
  const at = (log: number) => saturatingProfile(data, Math.exp(log), fixed)
  const grid = halfDoseGrid(data)
  const values = grid.map((log) => at(log).lackSumSquares)
  const least = values.reduce((best, value, i) => (value < values[best]! ? i : best), 0)
  if (least === 0 || least === grid.length - 1) throw notFound(least === 0 ? 'step' : 'no-bend')
  const [low, high] = [grid[least - 1]!, grid[least + 1]!]
  // a minimum between them: falling at one end, rising at the other
  if (!(at(low).derivative < 0 && at(high).derivative > 0)) throw notFound('flat')
  const log = bracketedRoot({ f: (x) => at(x).derivative, low, high, tolerance: 1e-13 })

  const { e0, emax, lackSumSquares } = at(log)
  const ed50 = Math.exp(log)
  const spread = residual(lackSumSquares)
  const jacobian = data.groups.map(({ dose, count }) => {
    const h = dose / (ed50 + dose)
    // ed50 by its log, so that columns are of one size
    const columns = [h, -emax * h * (1 - h)]
    return (free ? [1, ...columns] : columns).map((value) => value * Math.sqrt(count))
  })
  const unscaled = covarianceOf(jacobian)
  const scale = free ? [1, 1, ed50] : [1, ed50]
  const estimated = unscaled.map((row, i) =>
    row.map((value, j) => value * scale[i]! * scale[j]! * spread.residualSd ** 2),
  )
  return {
    model: 'saturating',
    names: ['e0', 'emax', 'ed50'],
    estimates: [free ? data.origin + e0 : fixedE0!, emax, ed50],
    covariance: free ? estimated : [[0, 0, 0], ...estimated.map((row) => [0, ...row])],
    ...spread,
  }
}

function covarianceOf(x: number[][]): number[][] {
  try {
    return leastSquares({ x, y: x.map(() => 0) }).unscaledCovariance
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'rank-deficient') throw notFound('flat')
    throw error
  }
}

function notFound(reason: 'step' | 'no-bend' | 'flat'): CalcError {
  return new CalcError('no-convergence', { field: 'rows', reason })
}

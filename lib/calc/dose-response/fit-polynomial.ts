import { leastSquares } from '../analysis/least-squares'
import { residualOf } from './residual-of'
import type { CurveFit, DoseGroups } from './types'

const NAMES = ['intercept', 'linear', 'quadratic'] as const

/**
 * Straight line or parabola through dose and value by least squares, on the means by dose, each with its weight.
 * @param groups as many doses as parameters, or more, and more values than parameters
 * @throws CalcError 'not-possible' with reason 'few-doses', 'no-residual-df' or 'zero-variance'
 * Source: Draper & Smith (1998), Applied Regression Analysis, chapters 1 and 12.
 */
export function fitPolynomial(data: DoseGroups, model: 'linear' | 'quadratic'): CurveFit {
  const p = model === 'linear' ? 2 : 3
  // doses from 0 to 1, so that their squares are of the same size
  const top = data.groups.at(-1)!.dose
  const powers = (dose: number) => Array.from({ length: p }, (_, j) => (dose / top) ** j)
  const residual = residualOf(data, p, p)
  const fit = leastSquares({
    x: data.groups.map(({ dose, count }) => powers(dose).map((value) => value * Math.sqrt(count))),
    y: data.groups.map(({ offset, count }) => offset * Math.sqrt(count)),
  })
  const spread = residual(fit.residualSumSquares)
  const scale = (j: number) => top ** -j
  return {
    model,
    names: NAMES.slice(0, p),
    estimates: fit.coefficients.map((value, j) => (j === 0 ? data.origin : 0) + value * scale(j)),
    covariance: fit.unscaledCovariance.map((row, i) =>
      row.map((value, j) => value * scale(i) * scale(j) * spread.residualSd ** 2),
    ),
    ...spread,
  }
}

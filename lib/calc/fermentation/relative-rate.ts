import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

/**
 * Rate of yeast at a temperature as a share of its rate at the optimum: the cardinal temperature model with inflection,
 * (T − Tmax)(T − Tmin)² / {(Topt − Tmin)·[(Topt − Tmin)(T − Topt) − (Topt − Tmax)(Topt + Tmin − 2T)]}.
 * It is of growth; gassing in dough warms up faster with temperature (see equivalentMinutes).
 * @param tempC of the dough, °C, −20 to 100
 * @param minimumTempC < optimumTempC < maximumTempC, −20 to 100 °C; the optimum above the middle of the other two
 * @returns share, 0 to 1; 0 at and beyond minimum and maximum
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'optimum-below-middle'
 * Source: L. Rosso, J. R. Lobry, J. P. Flandrois (1993), Journal of Theoretical Biology 162: 447–463.
 * @example 20 °C with 2.8, 32.3 and 45.4 °C: 0.596
 */
export function relativeRateShare(q: {
  tempC: number
  minimumTempC: number
  optimumTempC: number
  maximumTempC: number
}): number {
  const t = mustBeWithin('tempC', q.tempC, { min: -20, max: 100 })
  const low = mustBeWithin('minimumTempC', q.minimumTempC, { min: -20, max: 100 })
  const best = mustBeWithin('optimumTempC', q.optimumTempC, { over: low, max: 100 })
  const high = mustBeWithin('maximumTempC', q.maximumTempC, { over: best, max: 100 })
  if (best <= (low + high) / 2) {
    throw new CalcError('not-possible', { field: 'optimumTempC', value: best, reason: 'optimum-below-middle' })
  }
  if (t <= low || t >= high) return 0
  const bracket = (best - low) * (t - best) - (best - high) * (best + low - 2 * t)
  return ((t - high) * (t - low) ** 2) / ((best - low) * bracket)
}

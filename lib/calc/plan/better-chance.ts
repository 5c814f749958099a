import { mustBeWithin } from '../checks'
import { logScaleDensity } from '../distributions/chi-mixture'
import { chiSquaredTail } from '../distributions/chi-squared-tail'
import { normalUpper } from '../distributions/normal-tail'
import { CalcError } from '../error'

/**
 * Chance that gainVerdict says 'better' of one arm: its interval, half as wide as c times the estimated standard
 * error, lies above 0, and the estimate is at or above the worthwhile difference.
 * P(D ≥ max(w, c s σ)) with D normal and s = χ_ν / √ν: the part of small s, where the worthwhile difference decides,
 * in closed form, the rest by Simpson's rule in ln s from where the two meet.
 * @param trueDifference towards the good side, within ±1000 differenceSe; @param worthwhile ≥ 0
 * @param differenceSe true, > 0
 * @param criticalValue c > 0; @param df of the residual variance, 1 to 1e6
 * @returns 0 to 1, about 1e-6 absolute
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: normal theory of the additive model (Searle 1971); rule as in gainVerdict.
 */
export function betterChance(q: {
  trueDifference: number
  worthwhile: number
  differenceSe: number
  criticalValue: number
  df: number
}): number {
  const se = mustBeWithin('differenceSe', q.differenceSe, { over: 0 })
  const shift = mustBeWithin('trueDifference', q.trueDifference) / se
  if (Math.abs(shift) > 1000)
    throw new CalcError('out-of-range', {
      field: 'trueDifference',
      value: q.trueDifference,
      reason: 'far-beyond-spread',
    })
  const bar = mustBeWithin('worthwhile', q.worthwhile, { min: 0 }) / se
  const c = mustBeWithin('criticalValue', q.criticalValue, { over: 0 })
  const df = mustBeWithin('df', q.df, { min: 1, max: 1e6 })

  const meet = bar / c
  const small = normalUpper(bar - shift) * chiSquaredTail({ x: df * meet * meet, df, tail: 'lower' })
  // beyond these ends the density of ln s leaves less than 1e-12
  const high = 8 / Math.sqrt(2 * df)
  const low = Math.max(-high - 28 / df, meet === 0 ? -Infinity : Math.log(meet))
  if (low >= high) return small
  const logDensity = logScaleDensity(df)
  // an even number of steps, short against the narrowest bend of the integrand, see chiMixture
  const steps = 2 * Math.ceil((high - low) / 2 / Math.min(0.1, 0.25 / Math.sqrt(2 * df + shift * shift)))
  const step = (high - low) / steps
  let sum = 0
  for (let i = 0; i <= steps; i++) {
    const w = low + i * step
    const times = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2
    sum += times * Math.exp(logDensity(w)) * normalUpper(c * Math.exp(w) - shift)
  }
  return Math.min(1, small + (sum * step) / 3)
}

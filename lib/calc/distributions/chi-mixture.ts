import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { stirlingError } from './stirling-error'

const MOST_NODES = 400_000

export type TailPair = { lower: number; upper: number }

/**
 * Averages a pair of probabilities for a known standard deviation over the distribution of s = χ_ν / √ν, which turns
 * a normal probability into one of Student's kind. Trapezoidal rule in ln s, which converges exponentially here;
 * both sides are summed as such, so a small one keeps its digits.
 * @param atScale lower and upper probability at s, smooth, each monotone in s
 * @param df 0.5 ≤ df ≤ 1e6
 * @param noncentrality largest shift of a normal mean inside atScale, in its SDs, 0 to 1000: a shift makes the
 *   integrand narrower, with a curvature of at most 4 df + 2 δ² in ln s, and the steps finer
 * @returns about 1e-13 relative (1e-10 at 1e6 df), 0 to 1
 * @throws CalcError 'not-finite' | 'out-of-range' | 'no-convergence'
 * Source: Trefethen & Weideman (2014), "The exponentially convergent trapezoidal rule", SIAM Review 56.
 */
export function chiMixture(q: { atScale: (s: number) => TailPair; df: number; noncentrality?: number }): TailPair {
  const df = mustBeWithin('df', q.df, { min: 0.5, max: 1e6 })
  const shift = mustBeWithin('noncentrality', q.noncentrality ?? 0, { min: 0, max: 1000 })
  const logDensity = logScaleDensity(df)
  const step = Math.min(0.12, 0.5 / Math.sqrt(2 * df + shift * shift))
  let [lower, upper] = [0, 0]
  const atNothing = q.atScale(0)
  const add = (node: number): boolean => {
    const w = node * step
    const weight = step * Math.exp(logDensity(w))
    if (weight === 0) return false
    const part = q.atScale(Math.exp(w))
    lower += weight * part.lower
    upper += weight * part.upper
    // on the way down a side that is 0 here and at s = 0 is 0 between; what is left of the other beyond w is at most a
    // few weights divided by the fall per node
    const done = (side: 'lower' | 'upper') => node < 0 && part[side] === 0 && atNothing[side] === 0
    const least = Math.min(done('lower') ? 1 : lower, done('upper') ? 1 : upper)
    return weight > 1e-14 * least * step * Math.min(1, df)
  }
  let node = 0
  while (add(node) && node < MOST_NODES) node++
  node = -1
  while (add(node) && node > -MOST_NODES) node--
  if (Math.abs(node) >= MOST_NODES) throw new CalcError('no-convergence', { field: 'df', value: df })
  return { lower: Math.min(1, lower), upper: Math.min(1, upper) }
}

/** Logarithm of the density of ln s at w, s = χ_ν / √ν; its peak is at 0. For the inside of an integral: no guards. */
export function logScaleDensity(df: number): (w: number) => number {
  const half = df / 2
  const logFront = Math.LN2 + 0.5 * Math.log(half / (2 * Math.PI)) - stirlingError(half)
  return (w) => logFront + df * (w - 0.5 * Math.expm1(2 * w))
}

import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { deviance } from './deviance'
import type { Tail } from './normal-tail'
import { regularisedBeta } from './regularised-beta'
import { stirlingError } from './stirling-error'

const MOST_TERMS = 20_000

/**
 * Noncentral F: probability of one tail as a Poisson mixture of incomplete beta functions. All terms are positive and
 * each tail is summed as such, so that a small one keeps its digits.
 * @param f ≥ 0; @param df1 numerator, 0.01 to 1e6; @param df2 denominator, 0.01 to 1e6
 * @param noncentrality λ, 0 to 1e4: sum of squared true effects in units of the error variance
 * @returns 0 to 1, about 1e-12 relative for df ≤ 1e4; 0 below about 1e-300
 * @throws CalcError 'not-finite' | 'out-of-range' | 'no-convergence'
 * Source: Johnson, Kotz & Balakrishnan (1995), Continuous Univariate Distributions 2, chapter 30; Abramowitz & Stegun 26.6.20.
 * @example noncentralFTail({ f: 3.24, df1: 3, df2: 16, noncentrality: 5, tail: 'upper' }) // 0.3534
 */
export function noncentralFTail(q: { f: number; df1: number; df2: number; noncentrality: number; tail: Tail }): number {
  const f = mustBeWithin('f', q.f, { min: 0 })
  const df1 = mustBeWithin('df1', q.df1, { min: 0.01, max: 1e6 })
  const df2 = mustBeWithin('df2', q.df2, { min: 0.01, max: 1e6 })
  const mean = mustBeWithin('noncentrality', q.noncentrality, { min: 0, max: 1e4 }) / 2
  // in ratio form: df1 f may not be a finite number
  const ratio = (df1 / df2) * f
  const [x, y] = [ratio === Infinity ? 1 : ratio / (1 + ratio), 1 / (1 + ratio)]
  const part = (j: number) => regularisedBeta({ x, y, a: df1 / 2 + j, b: df2 / 2 })[q.tail]

  const middle = Math.floor(mean)
  let sum = 0
  for (let j = middle; ; j++) {
    const weight = poisson(j, mean)
    sum += weight * part(j)
    // what follows falls at least as fast as a geometric series
    if (weight * (j + 1) <= 1e-17 * sum * (j + 1 - mean)) break
    if (j - middle > MOST_TERMS)
      throw new CalcError('no-convergence', { field: 'noncentrality', value: q.noncentrality })
  }
  for (let j = middle - 1; j >= 0; j--) {
    const weight = poisson(j, mean)
    sum += weight * part(j)
    if (weight * j <= 1e-17 * sum) break
  }
  return Math.min(1, sum)
}

/** Chance of j in a Poisson distribution, Loader (2000). */
function poisson(j: number, mean: number): number {
  if (mean === 0) return j === 0 ? 1 : 0
  if (j === 0) return Math.exp(-mean)
  return Math.exp(-stirlingError(j) - deviance({ x: j, m: mean })) / Math.sqrt(2 * Math.PI * j)
}

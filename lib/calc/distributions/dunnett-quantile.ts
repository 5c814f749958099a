import { mustBeWithin } from '../checks'
import { bracketedRoot } from './bracketed-root'
import { chebyshevFit } from './chebyshev-fit'
import { chiMixture } from './chi-mixture'
import { type Sides, dunnettNormalTail } from './dunnett-tail'
import { normalQuantile } from './normal-quantile'
import { tQuantile } from './t-quantile'

/** The logarithm is fitted in two pieces, which meet where it bends most. */
const BEND = 2.8
const FAR_POINTS = 30

/**
 * The critical value c at which dunnettTail's `upper` equals p.
 * The probability at a known standard deviation does not depend on c or df but through the limit, so it is worked out
 * at a few dozen limits and put into a polynomial of its logarithm once; the root search then costs next to nothing.
 * @param p 1e-10 ≤ p ≤ 0.5; @param df, loadings, sides as in dunnettTail
 * @returns about 1e-10 relative (1e-9 for twelve arms)
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty' | 'no-convergence'
 * Source: inversion between the unadjusted and the Bonferroni t quantile, which enclose it.
 * @example dunnettQuantile({ p: 0.05, df: 10, loadings: [0.7071067811865476, 0.7071067811865476], sides: 'two' }) // 2.5683
 */
export function dunnettQuantile(q: { p: number; df: number; loadings: readonly number[]; sides: Sides }): number {
  const p = mustBeWithin('p', q.p, { min: 1e-10, max: 0.5 })
  const share = q.sides === 'two' ? 2 : 1
  const low = tQuantile({ p: p / share, df: q.df, tail: 'upper' })
  const atLimit = dunnettNormalTail({ loadings: q.loadings, shifts: q.loadings.map(() => 0), sides: q.sides })
  if (q.loadings.length === 1) return low
  const high = tQuantile({ p: p / share / q.loadings.length, df: q.df, tail: 'upper' })
  // beyond `most` the tail adds less than a 1e-13 part of p
  const most = normalQuantile({ p: (1e-13 * p) / q.loadings.length, tail: 'upper' })
  const exact = (limit: number) => Math.log(atLimit(limit).upper)
  const near = chebyshevFit({ f: exact, low: 0, high: BEND, points: nearPoints(q.loadings) })
  const far = chebyshevFit({ f: exact, low: BEND, high: most, points: FAR_POINTS })
  const atScale = (c: number) => (s: number) => {
    const limit = c * s
    const upper = limit > most ? 0 : Math.exp(limit < BEND ? near(limit) : far(limit))
    return { lower: Math.max(0, 1 - upper), upper }
  }
  const f = (c: number) => Math.log(chiMixture({ atScale: atScale(c), df: q.df }).upper) - Math.log(p)
  return bracketedRoot({ f, low, high: high * (1 + 1e-9), tolerance: 1e-10 })
}

/**
 * Chebyshev points up to the bend for about 1e-11 of the probability: arms that are nearly one (loadings near 1) make
 * it turn sharply near a limit of 0, within √(1 − l²), and Bernstein's ellipse that leaves that out is thin.
 */
function nearPoints(loadings: readonly number[]): number {
  const distance = Math.min(...loadings.map((l) => Math.sqrt((1 - l) * (1 + l)))) / (BEND / 2)
  const growth = Math.log(1 + distance + Math.sqrt(distance * (distance + 2)))
  return Math.min(200, Math.max(26, Math.ceil(Math.log(1e13) / growth)))
}

import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { deviance } from './deviance'
import { stirlingError } from './stirling-error'

const MOST_TERMS = 100_000

/**
 * Regularised incomplete gamma functions P(a, x) and Q(a, x) = 1 − P: a series left of a + 1, a continued fraction
 * right of it, each for the side that is small there.
 * @param a 1e-3 ≤ a ≤ 1e8; @param x ≥ 0
 * @returns lower P, upper Q; about 1e-13 relative for a ≤ 1e4
 * @throws CalcError 'not-finite' | 'out-of-range' | 'no-convergence'
 * Source: DLMF 8.11.4 and 8.9.2 by the method of Lentz (1976); leading factor by Loader (2000).
 * @example regularisedGamma({ a: 1, x: 2 }).upper // e⁻²
 */
export function regularisedGamma(q: { a: number; x: number }): { lower: number; upper: number } {
  const a = mustBeWithin('a', q.a, { min: 1e-3, max: 1e8 })
  const x = mustBeWithin('x', q.x, { min: 0 })
  if (x === 0) return { lower: 0, upper: 1 }
  // xᵃ e⁻ˣ / Γ(a + 1)
  const factor = Math.exp(-stirlingError(a) - deviance({ x: a, m: x })) / Math.sqrt(2 * Math.PI * a)
  if (x < a + 1) {
    const lower = Math.min(1, factor * series(a, x))
    return { lower, upper: 1 - lower }
  }
  const upper = Math.min(1, factor * a * fraction(a, x))
  return { lower: 1 - upper, upper }
}

function series(a: number, x: number): number {
  let term = 1
  let sum = 1
  for (let n = 1; n <= MOST_TERMS; n++) {
    term *= x / (a + n)
    sum += term
    if (term < sum * 1e-17) return sum
  }
  throw new CalcError('no-convergence', { field: 'a', value: a, reason: 'gamma-series' })
}

function fraction(a: number, x: number): number {
  const tiny = 1e-300
  const away = (v: number) => (Math.abs(v) < tiny ? tiny : v)
  let b = x + 1 - a
  let c = 1 / tiny
  let d = 1 / away(b)
  let value = d
  for (let n = 1; n <= MOST_TERMS; n++) {
    const top = -n * (n - a)
    b += 2
    d = 1 / away(top * d + b)
    c = away(b + top / c)
    value *= d * c
    if (Math.abs(d * c - 1) < 2e-16) return value
  }
  throw new CalcError('no-convergence', { field: 'a', value: a, reason: 'gamma-fraction' })
}

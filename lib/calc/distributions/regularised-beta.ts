import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { deviance } from './deviance'
import { stirlingError } from './stirling-error'

const MOST_TERMS = 100_000

/**
 * Regularised incomplete beta function Iₓ(a, b) and its complement. The smaller side of the mean is computed, the
 * other is 1 minus it, so both keep their digits wherever they are small.
 * @param x 0 ≤ x ≤ 1; @param y 1 − x, given apart so that a small one keeps its digits
 * @param a 1e-3 ≤ a ≤ 1e9; @param b the same
 * @returns lower Iₓ(a, b), upper 1 − Iₓ(a, b); about 1e-13 relative for a, b ≤ 1e4 (1e-11 at 1e6)
 * @throws CalcError 'not-finite' | 'out-of-range' | 'no-convergence'
 * Source: continued fraction DLMF 8.17.22 by the method of Lentz (1976); leading factor by Loader (2000).
 * @example regularisedBeta({ x: 0.5, y: 0.5, a: 2, b: 2 }) // { lower: 0.5, upper: 0.5 }
 */
export function regularisedBeta(q: { x: number; y: number; a: number; b: number }): { lower: number; upper: number } {
  const x = mustBeWithin('x', q.x, { min: 0, max: 1 })
  const y = mustBeWithin('y', q.y, { min: 0, max: 1 })
  const a = mustBeWithin('a', q.a, { min: 1e-3, max: 1e9 })
  const b = mustBeWithin('b', q.b, { min: 1e-3, max: 1e9 })
  mustBeWithin('x + y', x + y, { min: 1 - 1e-12, max: 1 + 1e-12 })
  if (x === 0) return { lower: 0, upper: 1 }
  if (y === 0) return { lower: 1, upper: 0 }
  if (x < (a + 1) / (a + b + 2)) {
    const lower = leftPart(x, y, a, b)
    return { lower, upper: 1 - lower }
  }
  const upper = leftPart(y, x, b, a)
  return { lower: 1 - upper, upper }
}

function leftPart(x: number, y: number, a: number, b: number): number {
  return Math.min(1, (leadingFactor(x, y, a, b) * fraction(x, a, b)) / a)
}

/** xᵃ yᵇ / B(a, b) */
function leadingFactor(x: number, y: number, a: number, b: number): number {
  const n = a + b
  const [mx, my] = [n * x, n * y]
  if (mx === 0 || my === 0) return 0
  const log =
    stirlingError(n) - stirlingError(a) - stirlingError(b) - deviance({ x: a, m: mx }) - deviance({ x: b, m: my })
  return Math.exp(log) * Math.sqrt((a * b) / (2 * Math.PI * n))
}

function fraction(x: number, a: number, b: number): number {
  const tiny = 1e-300
  const away = (v: number) => (Math.abs(v) < tiny ? tiny : v)
  let c = 1
  let d = 1 / away(1 - ((a + b) * x) / (a + 1))
  let value = d
  for (let m = 1; m <= MOST_TERMS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    d = 1 / away(1 + even * d)
    c = away(1 + even / c)
    value *= d * c
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    d = 1 / away(1 + odd * d)
    c = away(1 + odd / c)
    value *= d * c
    if (Math.abs(d * c - 1) < 2e-16) return value
  }
  throw new CalcError('no-convergence', { field: 'a', value: a, reason: 'beta-fraction' })
}

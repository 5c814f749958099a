import { mustBeWithin, mustHaveAtLeast, mustMatchLength } from '../checks'
import { CalcError } from '../error'
import type { Sides } from './dunnett-tail'
import { normalQuantile } from './normal-quantile'
import { normalUpper } from './normal-tail'
import { stirlingError } from './stirling-error'
import { tTail } from './t-tail'

const ROUNDING = 1e-12
const POINTS = 2003
/** Richtmyer's lattice: fractional parts of multiples of these. */
const ROOTS = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31].map(Math.sqrt)
const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * Multivariate t of any correlation: `two` P(max |Tᵢ| ≤ c), `one` P(max Tᵢ ≤ c), and the complement.
 * For each value of the shared standard deviation (trapezoidal rule in its logarithm) the arms are taken one after
 * another, each given those before, over a fixed lattice of points: the same input always gives the same number.
 * @param c finite, ≥ 0 for `two`; @param df 0.5 ≤ df ≤ 1e6
 * @param correlation k × k, positive definite, 1 on the diagonal, 2 ≤ k ≤ 12
 * @returns about 1e-4 absolute or better; the upper side never above the sum of the single tails
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty' | 'wrong-shape'; 'not-possible' with reason 'not-definite'
 * Source: Genz (1992), J. Comput. Graph. Stat. 1; Genz & Bretz (2009), chapter 4; Richtmyer's lattice with the tent.
 */
export function multivariateTTail(q: {
  c: number
  df: number
  correlation: readonly (readonly number[])[]
  sides: Sides
}): { lower: number; upper: number } {
  const c = mustBeWithin('c', q.c, q.sides === 'two' ? { min: 0 } : {})
  const df = mustBeWithin('df', q.df, { min: 0.5, max: 1e6 })
  mustHaveAtLeast('correlation', q.correlation, 2)
  mustBeWithin('correlation.length', q.correlation.length, { max: ROOTS.length + 1 })
  const factor = cholesky(q.correlation)

  const half = df / 2
  const logFront = Math.LN2 + 0.5 * Math.log(half / (2 * Math.PI)) - stirlingError(half)
  const step = Math.min(0.2, 0.8 / Math.sqrt(2 * df))
  let upper = 0
  const add = (node: number): boolean => {
    const w = node * step
    const weight = step * Math.exp(logFront + df * (w - 0.5 * Math.expm1(2 * w)))
    if (weight > 0) upper += weight * outside(factor, c * Math.exp(w), q.sides, node)
    return weight > 1e-9 * step * Math.min(1, df)
  }
  let node = 0
  while (add(node)) node++
  node = -1
  while (add(node)) node--
  const single = tTail({ t: c, df, tail: 'upper' }) * (q.sides === 'two' ? 2 : 1)
  upper = Math.min(upper, q.correlation.length * single, 1)
  return { lower: 1 - upper, upper }
}

/** P(some |Zᵢ| or Zᵢ > limit), as the sum of the parts that first leave at arm 1, 2, … */
function outside(factor: readonly (readonly number[])[], limit: number, sides: Sides, shift: number): number {
  const k = factor.length
  const z = new Array<number>(k).fill(0)
  let total = 0
  for (let point = 0; point < POINTS; point++) {
    let inside = 1
    for (let i = 0; i < k; i++) {
      const row = factor[i]!
      let centre = 0
      for (let j = 0; j < i; j++) centre += row[j]! * z[j]!
      const above = normalUpper((limit - centre) / row[i]!)
      const below = sides === 'two' ? normalUpper((limit + centre) / row[i]!) : 0
      total += inside * (above + below)
      const kept = Math.max(0, 1 - above - below)
      inside *= kept
      if (inside === 0) break
      if (i < k - 1) {
        const u = ((point + 0.5) * ROOTS[i]! + shift * GOLDEN) % 1
        const tent = Math.abs(2 * (u < 0 ? u + 1 : u) - 1)
        const p = Math.min(1 - 1e-16, Math.max(1e-300, below + tent * kept))
        z[i] = normalQuantile({ p, tail: 'lower' })
      }
    }
  }
  return total / POINTS
}

/** Lower triangle L with L Lᵀ = the matrix. */
function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const k = matrix.length
  const lower = matrix.map(() => new Array<number>(k).fill(0))
  for (let i = 0; i < k; i++) {
    mustMatchLength(`correlation[${i}]`, matrix[i]!, k)
    for (let j = 0; j <= i; j++) {
      let sum = mustBeWithin(`correlation[${i}][${j}]`, matrix[i]![j]!, { min: -1 - ROUNDING, max: 1 + ROUNDING })
      for (let m = 0; m < j; m++) sum -= lower[i]![m]! * lower[j]![m]!
      if (i === j && sum <= 1e-10) throw new CalcError('not-possible', { field: 'correlation', value: i, reason: 'not-definite' })
      lower[i]![j] = i === j ? Math.sqrt(sum) : sum / lower[j]![j]!
    }
  }
  return lower
}

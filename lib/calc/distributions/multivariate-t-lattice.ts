import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { seededRandom } from '../random/seeded-random'
import { logScaleDensity } from './chi-mixture'
import { correlationFactor } from './correlation-factor'
import { type Sides, dunnettTail } from './dunnett-tail'
import { nearestLoadings } from './nearest-loadings'
import { normalQuantile } from './normal-quantile'
import { normalUpper } from './normal-tail'
import { tTail } from './t-tail'

/** Richtmyer's lattice: fractional parts of multiples of these. */
const ROOTS = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31].map(Math.sqrt)
/** Shifted copies of the lattice, whose spread tells the error; t quantile of 7 df, 99 %, two-sided. */
const COPIES = 8
const T_OF_COPIES = 3.4994832973505
/** Points of one copy at the most likely standard deviation, tried one after another; others have fewer. */
export const LATTICE_SIZES = [61, 127, 251, 509, 1021, 2039, 4093, 8191, 16381] as const
const LEAST_POINTS = 31

/** Where it is tried whether the nearest product helps: a limit that is usual for a critical value. */
const TRIAL_LIMIT = 2

export type LatticeSum = { upper: number; errorEstimate: number }

/**
 * A lattice rule for the upper side of the multivariate t, as a function of the limit and of the points in a copy.
 * What is summed is the difference from the nearest product correlation, whose own value is exact (dunnettTail): the
 * error is that of a small number. Where that is no help the whole is summed.
 * For each value of the shared standard deviation (trapezoidal rule in its logarithm) the comparisons are taken one
 * after another, each given those before, over the points. The copies' shifts are drawn from a fixed seed and do not
 * depend on the limit: the same input always gives the same number, which is smooth in the limit.
 * @param df 0.5 ≤ df ≤ 1e6; @param correlation k × k, positive definite, 1 on the diagonal, 2 ≤ k ≤ 12
 * @returns P(max |Tᵢ| > c) or P(max Tᵢ > c), between the single tail and the sum of single tails, and the half width
 *   of its 99 % interval over the copies
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty' | 'wrong-shape'; 'not-possible' with reason 'not-definite'
 * Source: Genz (1992), J. Comput. Graph. Stat. 1; Genz & Bretz (2009), chapter 4; shifts after Cranley & Patterson
 * (1976), SIAM J. Numer. Anal. 13; points weighted t (1 − t) along the lattice, Sugihara & Murota (1982), Math. Comp. 39.
 */
export function multivariateTLattice(q: {
  df: number
  correlation: readonly (readonly number[])[]
  sides: Sides
}): (c: number, points: number) => LatticeSum {
  const df = mustBeWithin('df', q.df, { min: 0.5, max: 1e6 })
  mustHaveAtLeast('correlation', q.correlation, 2)
  const k = mustBeWithin('correlation.length', q.correlation.length, { max: ROOTS.length + 1 })
  const factor = correlationFactor(q.correlation)
  const loadings = nearestLoadings(q.correlation)
  const nearFactor = correlationFactor(loadings.map((a, i) => loadings.map((b, j) => (i === j ? 1 : a * b))))
  const scales = scalesOf(df)
  const random = seededRandom('lattice')
  const shifts = Array.from({ length: COPIES }, () => scales.map(() => ROOTS.slice(0, k - 1).map(random)))
  const share = q.sides === 'two' ? 2 : 1

  const overScales = (triangle: readonly (readonly number[])[], copy: readonly number[][], c: number, points: number) =>
    scales.reduce((sum, { s, weight, part }, i) => {
      const at = {
        limit: c * s,
        sides: q.sides,
        shift: copy[i]!,
        points: Math.max(LEAST_POINTS, Math.round(points * part)),
      }
      return sum + weight * outside(triangle, at)
    }, 0)

  const copiesOf = (triangle: readonly (readonly number[])[], c: number, points: number) =>
    shifts.map((copy) => overScales(triangle, copy, c, points))
  const minus = (a: readonly number[], b: readonly number[]) => a.map((each, i) => each - b[i]!)
  // far from any product the difference may be the larger of the two
  const trial = copiesOf(factor, TRIAL_LIMIT, LATTICE_SIZES[0])
  const isNear = spreadOf(minus(trial, copiesOf(nearFactor, TRIAL_LIMIT, LATTICE_SIZES[0]))) < spreadOf(trial)

  return (c, points) => {
    const whole = copiesOf(factor, c, points)
    const copies = isNear ? minus(whole, copiesOf(nearFactor, c, points)) : whole
    const exact = isNear ? dunnettTail({ c, df, loadings, sides: q.sides }).upper : 0
    const single = share * tTail({ t: c, df, tail: 'upper' })
    return {
      upper: Math.min(1, k * single, Math.max(single, exact + meanOf(copies))),
      errorEstimate: (T_OF_COPIES * spreadOf(copies)) / Math.sqrt(COPIES),
    }
  }
}

const meanOf = (list: readonly number[]) => list.reduce((a, b) => a + b) / list.length

/** Standard deviation. */
function spreadOf(list: readonly number[]): number {
  const mean = meanOf(list)
  return Math.sqrt(list.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (list.length - 1))
}

/** Nodes of the shared standard deviation; what is left out weighs less than 1e-8. */
function scalesOf(df: number): { s: number; weight: number; part: number }[] {
  const logDensity = logScaleDensity(df)
  const step = Math.min(0.2, 0.8 / Math.sqrt(2 * df))
  const least = 1e-9 * step * Math.min(1, df)
  const side = (first: number, direction: 1 | -1) => {
    const found = []
    for (let node = first; ; node += direction) {
      const weight = step * Math.exp(logDensity(node * step))
      if (weight <= least) return found
      found.push({ s: Math.exp(node * step), weight })
    }
  }
  // an error that falls with the points is least for a given effort when they go by the root of the weight
  const nodes = [...side(0, 1), ...side(-1, -1)]
  return nodes.map((node) => ({ ...node, part: Math.sqrt(node.weight / nodes[0]!.weight) }))
}

/** P(some |Zᵢ| or Zᵢ > limit), as the sum of the parts that first leave at comparison 1, 2, … */
function outside(
  factor: readonly (readonly number[])[],
  { limit, sides, shift, points }: { limit: number; sides: Sides; shift: readonly number[]; points: number },
): number {
  const k = factor.length
  const z = new Array<number>(k).fill(0)
  let total = 0
  for (let point = 0; point < points; point++) {
    const share = (point + 0.5) / points
    let inside = share * (1 - share)
    for (let i = 0; i < k && inside > 0; i++) {
      const row = factor[i]!
      let centre = 0
      for (let j = 0; j < i; j++) centre += row[j]! * z[j]!
      const above = normalUpper((limit - centre) / row[i]!)
      const below = sides === 'two' ? normalUpper((limit + centre) / row[i]!) : 0
      total += inside * (above + below)
      const kept = Math.max(0, 1 - above - below)
      inside *= kept
      if (i < k - 1) {
        const u = (point * ROOTS[i]! + shift[i]!) % 1
        const p = below + Math.abs(2 * u - 1) * kept
        z[i] = normalQuantile({ p: Math.min(1 - 1e-16, Math.max(1e-300, p)), tail: 'lower' })
      }
    }
  }
  return (total * 6) / (points + 0.5 / points)
}

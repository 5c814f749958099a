import { CalcError } from '../error'
import { dot, orthonormalBasis, solveTriangle } from './orthonormal-basis'

export type BoundedProblem = {
  /** Columns of A, one for each unknown; all of the length of `b`. */
  columns: readonly (readonly number[])[]
  b: readonly number[]
  /** Lower bounds, finite. */
  lower: readonly number[]
  /** Upper bounds, at or above the lower; Infinity for none. */
  upper: readonly number[]
}

/** A gradient below this part of (column length × residual length) is zero. */
const FLAT = 1e-10
/** The same against the length of b: the noise of computing the residual. */
const NOISE = 1e-14

/** b − A·x. */
export function residualOf(problem: BoundedProblem, x: readonly number[]): number[] {
  const residual = [...problem.b]
  problem.columns.forEach((column, j) => {
    const xj = x[j] ?? 0
    if (xj !== 0) for (let k = 0; k < residual.length; k++) residual[k] = (residual[k] ?? 0) - xj * (column[k] ?? 0)
  })
  return residual
}

/**
 * Least squares with bounds: minimises |A·x − b| over lower ≤ x ≤ upper. Of several solutions it returns one;
 * smallestChange picks among them.
 * Method: active set from all unknowns at their lower bounds. Columns enter one by one and stay independent, because
 * an entering column is never orthogonal to the residual, so no more unknowns are free than there are rows.
 * @throws CalcError 'no-convergence'
 * Source: C. L. Lawson and R. J. Hanson, Solving Least Squares Problems, 1974, ch. 23 (NNLS);
 *   P. B. Stark and R. L. Parker, Bounded-variable least squares, Computational Statistics 10, 1995.
 */
export function boundedLeastSquares(problem: BoundedProblem): number[] {
  const { columns, b, lower, upper } = problem
  const n = columns.length
  const x = lower.slice()
  const state: ('low' | 'high' | 'free')[] = new Array<'low' | 'high' | 'free'>(n).fill('low')
  const lengths = columns.map((column) => Math.sqrt(dot(column, column)))
  const bLength = Math.sqrt(dot(b, b)) + x.reduce((sum, value, j) => sum + Math.abs(value) * (lengths[j] ?? 0), 0)
  const refused = new Set<number>()

  for (let round = 0; round < 20 * (n + b.length) + 50; round++) {
    const residual = residualOf(problem, x)
    const residualLength = Math.sqrt(dot(residual, residual))
    if (residualLength <= NOISE * bLength) return x
    let entering = -1
    let steepest = 0
    for (let j = 0; j < n; j++) {
      const length = lengths[j] ?? 0
      if (state[j] === 'free' || refused.has(j) || length === 0 || (upper[j] ?? 0) <= (lower[j] ?? 0)) continue
      const slope = (dot(columns[j] ?? [], residual) / length) * (state[j] === 'low' ? 1 : -1)
      if (slope > FLAT * residualLength + NOISE * bLength && slope > steepest) {
        entering = j
        steepest = slope
      }
    }
    if (entering < 0) return x
    const cameFrom = state[entering]
    state[entering] = 'free'
    let first = true
    for (;;) {
      const free = [...columns.keys()].filter((j) => state[j] === 'free')
      if (free.length === 0) break
      const target = residualOf(problem, x)
      const { basis, picked, triangle } = orthonormalBasis(free.map((j) => columns[j] ?? []))
      const step = new Array<number>(free.length).fill(0)
      solveTriangle(
        triangle,
        basis.map((unit) => dot(unit, target)),
      ).forEach((value, c) => {
        step[picked[c] ?? 0] = value
      })
      if (first) {
        first = false
        const own = step[free.indexOf(entering)] ?? 0
        // Rounding can make an entering unknown want to leave at once; Lawson and Hanson put it back and try another.
        if (cameFrom === 'low' ? own <= 0 : own >= 0) {
          state[entering] = cameFrom ?? 'low'
          refused.add(entering)
          break
        }
      }
      let share = 1
      let blocked = -1
      free.forEach((j, i) => {
        const by = step[i] ?? 0
        const room = by < 0 ? (lower[j] ?? 0) - (x[j] ?? 0) : (upper[j] ?? 0) - (x[j] ?? 0)
        if (by !== 0 && Math.abs(room) < Math.abs(by) * share) {
          share = Math.abs(room / by)
          blocked = i
        }
      })
      free.forEach((j, i) => {
        x[j] = Math.min(upper[j] ?? Infinity, Math.max(lower[j] ?? 0, (x[j] ?? 0) + share * (step[i] ?? 0)))
      })
      if (blocked < 0) {
        refused.clear()
        break
      }
      const at = free[blocked] ?? 0
      const high = (step[blocked] ?? 0) > 0
      state[at] = high ? 'high' : 'low'
      x[at] = (high ? upper[at] : lower[at]) ?? 0
    }
  }
  throw new CalcError('no-convergence', { field: 'boundedLeastSquares', value: n })
}

import { CalcError } from '../error'
import type { BoundedProblem } from './bounded-least-squares'
import { dot, orthonormalBasis, solveTriangle } from './orthonormal-basis'

/** Differences below this are rounding, on unknowns that are relative changes of order one. */
const ROUNDING = 1e-12

/**
 * Of all points within the bounds with the same A·x as a given one, the one of smallest length |x|. It is unique.
 * Method: primal active set for this strictly convex problem. With the free unknowns F the optimum is the projection of
 * x_F on the row space of A_F; a bound is let go while its multiplier has the wrong sign. The rule of lowest index is
 * taken after a while, so that ties cannot go round for ever.
 * @param x0 a point within the bounds
 * @throws CalcError 'no-convergence'
 * Source: J. Nocedal and S. J. Wright, Numerical Optimization, 2nd ed. 2006, section 16.5.
 */
export function smallestChange(problem: Omit<BoundedProblem, 'b'>, x0: readonly number[]): number[] {
  const { columns, lower, upper } = problem
  const n = columns.length
  const rows = columns[0]?.length ?? 0
  const x = x0.slice()
  const size = 1 + Math.max(0, ...x.map(Math.abs))
  // All are free to start with: most of those that a fit left at a bound move inwards, and so in one step.
  const fixed = x.map((_, j) => (upper[j] ?? 0) <= (lower[j] ?? 0))
  const patience = 4 * n + 20

  for (let round = 0; round < 20 * patience; round++) {
    const free = [...fixed.keys()].filter((j) => !fixed[j])
    const freeRows = Array.from({ length: rows }, (_, k) => free.map((j) => columns[j]?.[k] ?? 0))
    const { basis, picked, triangle } = orthonormalBasis(freeRows)
    const freeX = free.map((j) => x[j] ?? 0)
    const along = basis.map((unit) => dot(unit, freeX))
    const wanted = free.map((_, i) => basis.reduce((sum, unit, r) => sum + (along[r] ?? 0) * (unit[i] ?? 0), 0))

    let share = 1
    let blocked = -1
    free.forEach((j, i) => {
      const by = (wanted[i] ?? 0) - (x[j] ?? 0)
      if (Math.abs(by) <= ROUNDING * size) return
      const room = by < 0 ? (lower[j] ?? 0) - (x[j] ?? 0) : (upper[j] ?? 0) - (x[j] ?? 0)
      if (Math.abs(room) < Math.abs(by) * share) {
        share = Math.abs(room / by)
        blocked = i
      }
    })
    free.forEach((j, i) => {
      const moved = (x[j] ?? 0) + share * ((wanted[i] ?? 0) - (x[j] ?? 0))
      x[j] = Math.min(upper[j] ?? Infinity, Math.max(lower[j] ?? 0, moved))
    })
    if (blocked >= 0) {
      const j = free[blocked] ?? 0
      x[j] = ((wanted[blocked] ?? 0) > (x[j] ?? 0) ? upper[j] : lower[j]) ?? 0
      fixed[j] = true
      continue
    }

    const multipliers = new Array<number>(rows).fill(0)
    solveTriangle(triangle, along).forEach((value, c) => {
      multipliers[picked[c] ?? 0] = value
    })
    let leaving = -1
    let worst = ROUNDING * size * 100
    for (let j = 0; j < n; j++) {
      if (!fixed[j] || (upper[j] ?? 0) <= (lower[j] ?? 0)) continue
      const pull = (x[j] ?? 0) - dot(columns[j] ?? [], multipliers)
      const wrong = x[j] === lower[j] ? -pull : pull
      if (wrong > worst) {
        leaving = j
        if (round > patience) break
        worst = wrong
      }
    }
    if (leaving < 0) return x
    fixed[leaving] = false
  }
  throw new CalcError('no-convergence', { field: 'smallestChange', value: n })
}

import fc from 'fast-check'
import { expect, test, vi } from 'vitest'
import { boundedLeastSquares, residualOf, type BoundedProblem } from '@/lib/calc/arms/bounded-least-squares'
import { dot } from '@/lib/calc/arms/orthonormal-basis'
import { solveLinearProgram } from '@/tests/support/linear-program'
import { forLong } from '@/tests/support/long'

/** A linear program is solved in each run, about 10 ms. */
const RUNS = forLong(150, 3_000)
vi.setConfig({ testTimeout: 30_000 })

const problem = fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 12 })).chain(([k, n]) =>
  fc.record({
    columns: fc.array(fc.array(fc.integer({ min: -5, max: 5 }), { minLength: k, maxLength: k }), {
      minLength: n,
      maxLength: n,
    }),
    b: fc.array(fc.integer({ min: -9, max: 9 }), { minLength: k, maxLength: k }),
    lower: fc.array(fc.integer({ min: -3, max: 0 }), { minLength: n, maxLength: n }),
    upper: fc.array(fc.constantFrom(0, 1, 4, Infinity), { minLength: n, maxLength: n }),
  }),
)

/** At the least-squares optimum no feasible point lies downhill: min over y of −Aᵀr · y is reached at x. */
function gapToOptimum(p: BoundedProblem, x: readonly number[]): number {
  const residual = residualOf(p, x)
  const downhill = p.columns.map((column) => -dot(column, residual))
  // Infinity is cut at a large number so that an unbounded direction shows as a gap and not as a status.
  const best = solveLinearProgram({
    minimise: downhill,
    rows: [],
    lower: p.lower,
    upper: p.upper.map((u) => Math.min(u, 1e4)),
  })
  return dot(downhill, x) - best.objective
}

test('the answer lies within the bounds and nothing feasible is downhill of it', () => {
  fc.assert(
    fc.property(problem, (p) => {
      const x = boundedLeastSquares(p)
      x.forEach((value, j) => {
        expect(value).toBeGreaterThanOrEqual(p.lower[j] ?? 0)
        expect(value).toBeLessThanOrEqual(p.upper[j] ?? 0)
      })
      expect(gapToOptimum(p, x)).toBeLessThan(1e-4)
    }),
    { seed: 1712, numRuns: RUNS },
  )
})

test('a small case by hand: the nearest point of a quarter plane', () => {
  const p = {
    columns: [
      [1, 0],
      [0, 1],
    ],
    b: [2, -3],
    lower: [0, 0],
    upper: [Infinity, Infinity],
  }
  expect(boundedLeastSquares(p)).toEqual([2, 0])
})

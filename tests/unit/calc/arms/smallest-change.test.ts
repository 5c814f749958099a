import fc from 'fast-check'
import { expect, test, vi } from 'vitest'
import { dot } from '@/lib/calc/arms/orthonormal-basis'
import { smallestChange } from '@/lib/calc/arms/smallest-change'
import { solveLinearProgram } from '@/tests/support/linear-program'
import { forLong } from '@/tests/support/long'

/** A linear program is solved in each run, about 10 ms. */
const RUNS = forLong(150, 3_000)
vi.setConfig({ testTimeout: 30_000 })

const start = fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 12 })).chain(([k, n]) =>
  fc.record({
    columns: fc.array(fc.array(fc.integer({ min: -5, max: 5 }), { minLength: k, maxLength: k }), {
      minLength: n,
      maxLength: n,
    }),
    lower: fc.array(fc.integer({ min: -3, max: 0 }), { minLength: n, maxLength: n }),
    upper: fc.array(fc.constantFrom(0, 1, 4), { minLength: n, maxLength: n }),
    share: fc.array(fc.constantFrom(0, 0.25, 0.5, 1), { minLength: n, maxLength: n }),
  }),
)

test('A·x is kept, bounds are kept, and no point with the same A·x is shorter', () => {
  fc.assert(
    fc.property(start, ({ columns, lower, upper, share }) => {
      const x0 = share.map((s, j) => (lower[j] ?? 0) + s * ((upper[j] ?? 0) - (lower[j] ?? 0)))
      const x = smallestChange({ columns, lower, upper }, x0)
      const product = (point: readonly number[], k: number) =>
        columns.reduce((s, column, j) => s + (column[k] ?? 0) * (point[j] ?? 0), 0)
      const rows = (columns[0] ?? []).map((_, k) => {
        expect(product(x, k)).toBeCloseTo(product(x0, k), 10)
        return {
          coefficients: columns.map((column) => column[k] ?? 0),
          low: product(x0, k) - 1e-9,
          high: product(x0, k) + 1e-9,
        }
      })
      x.forEach((value, j) => {
        expect(value).toBeGreaterThanOrEqual(lower[j] ?? 0)
        expect(value).toBeLessThanOrEqual(upper[j] ?? 0)
      })
      // |x|² is convex, so x is shortest exactly if x · (y − x) ≥ 0 for every feasible y.
      const { status, objective } = solveLinearProgram({ minimise: x, rows, lower, upper })
      expect(status).toBe('Optimal')
      expect(dot(x, x) - objective).toBeLessThan(1e-5)
    }),
    { seed: 1713, numRuns: RUNS },
  )
})

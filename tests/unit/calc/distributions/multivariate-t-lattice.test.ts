import { expect, test } from 'vitest'
import { dunnettTail } from '@/lib/calc/distributions/dunnett-tail'
import { multivariateTLattice } from '@/lib/calc/distributions/multivariate-t-lattice'

const productOf = (loadings: readonly number[]) => loadings.map((a, i) => loadings.map((b, j) => (i === j ? 1 : a * b)))

// Loadings beyond what the nearest product may have, so that the lattice itself is seen at work.
test.each([
  [[0.98, 0.6, 0.7], 3],
  [[0.99, 0.5, 0.6, 0.97], 12],
  [[0.98, 0.7, 0.7, 0.7, 0.7, 0.98], 60],
])('a product %j is met within the error estimate, which shrinks with the points', (loadings, df) => {
  for (const sides of ['one', 'two'] as const) {
    const lattice = multivariateTLattice({ df, correlation: productOf(loadings), sides })
    for (const c of [1, 2.5]) {
      const exact = dunnettTail({ c, df, loadings, sides }).upper
      const few = lattice(c, 127)
      const many = lattice(c, 1021)
      expect(Math.abs(few.upper - exact), JSON.stringify({ c, sides, exact, few })).toBeLessThanOrEqual(
        few.errorEstimate * 1.5,
      )
      expect(Math.abs(many.upper - exact), JSON.stringify({ c, sides, exact, many })).toBeLessThanOrEqual(
        many.errorEstimate * 1.5,
      )
      expect(many.errorEstimate).toBeLessThan(few.errorEstimate)
      expect(few.errorEstimate).toBeGreaterThan(0)
    }
  }
})

test('too few, too many and impossible degrees of freedom are refused', () => {
  const correlation = productOf([0.7, 0.7])
  expect(() => multivariateTLattice({ df: 9, correlation: [[1]], sides: 'two' })).toThrow('empty')
  expect(() =>
    multivariateTLattice({ df: 9, correlation: productOf(Array.from({ length: 13 }, () => 0.7)), sides: 'two' }),
  ).toThrow('out-of-range')
  expect(() => multivariateTLattice({ df: 0, correlation, sides: 'two' })).toThrow('"df"')
  expect(() => multivariateTLattice({ df: NaN, correlation, sides: 'two' })).toThrow('not-finite')
})

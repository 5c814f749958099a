import { expect, test } from 'vitest'
import { dunnettQuantile } from '@/lib/calc/distributions/dunnett-quantile'
import { multivariateTQuantile } from '@/lib/calc/distributions/multivariate-t-quantile'
import { multivariateTTail } from '@/lib/calc/distributions/multivariate-t-tail'

const product = [0.9, 0.5, 0.6, 0.8].map((a, i, all) => all.map((b, j) => (i === j ? 1 : a * b)))
const broken = [
  [1, 0.5, 0.52, 0.46],
  [0.5, 1, 0.52, 0.5],
  [0.52, 0.52, 1, 0.5],
  [0.46, 0.5, 0.5, 1],
]

test('where the correlation is a product it agrees with the exact critical value', () => {
  for (const sides of ['one', 'two'] as const) {
    const got = multivariateTQuantile({ p: 0.05, df: 9, correlation: product, sides })
    expect(Math.abs(got.c - dunnettQuantile({ p: 0.05, df: 9, loadings: [0.9, 0.5, 0.6, 0.8], sides }))).toBeLessThan(
      1e-3,
    )
    expect(got.errorEstimate).toBeLessThan(1e-4)
  }
})

test('in broken blocks it undoes the tail within the errors that both state', () => {
  for (const p of [0.2, 0.05, 0.01]) {
    const got = multivariateTQuantile({ p, df: 9, correlation: broken, sides: 'two' })
    const back = multivariateTTail({ c: got.c, df: 9, correlation: broken, sides: 'two' })
    expect(Math.abs(back.upper - p)).toBeLessThan(got.errorEstimate + back.errorEstimate + 1e-6)
    expect(got.method).toBe('shifted-richtmyer-lattice')
  }
})

test('probabilities beyond the stated range are refused', () => {
  for (const p of [0, 1e-5, 0.6, NaN])
    expect(() => multivariateTQuantile({ p, df: 9, correlation: broken, sides: 'two' })).toThrow('"p"')
})

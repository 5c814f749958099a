import { expect, test } from 'vitest'
import { dunnettQuantile } from '@/lib/calc/distributions/dunnett-quantile'
import { multivariateTQuantile } from '@/lib/calc/distributions/multivariate-t-quantile'

test('where the correlation is a product it agrees with the exact critical value', () => {
  const loadings = [0.9, 0.5, 0.6, 0.8]
  const correlation = loadings.map((a, i) => loadings.map((b, j) => (i === j ? 1 : a * b)))
  for (const sides of ['one', 'two'] as const) {
    const got = multivariateTQuantile({ p: 0.05, df: 9, correlation, sides })
    expect(Math.abs(got - dunnettQuantile({ p: 0.05, df: 9, loadings, sides }))).toBeLessThan(1e-3)
  }
})

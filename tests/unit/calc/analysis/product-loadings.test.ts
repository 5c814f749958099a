import fc from 'fast-check'
import { expect, test } from 'vitest'
import { productLoadings } from '@/lib/calc/analysis/product-loadings'

test('loadings are found again up to a common sign', () => {
  const loading = fc
    .tuple(fc.double({ min: 0.05, max: 0.99, noNaN: true }), fc.boolean())
    .map(([size, sign]) => (sign ? size : -size))
  fc.assert(
    fc.property(fc.array(loading, { minLength: 3, maxLength: 6 }), (loadings) => {
      const correlation = loadings.map((a, i) => loadings.map((b, j) => (i === j ? 1 : a * b)))
      const found = productLoadings(correlation)!
      found.forEach((l, i) => expect(Math.abs(l)).toBeCloseTo(Math.abs(loadings[i]!), 8))
    }),
    { seed: 5 },
  )
})

test('two arms always have them, also with negative correlation', () => {
  const [a, b] = productLoadings([
    [1, -0.4],
    [-0.4, 1],
  ])!
  expect(a! * b!).toBeCloseTo(-0.4, 14)
})

test('a correlation that is no product has none', () => {
  const correlation = [
    [1, 0.5, 0.5, 0.4],
    [0.5, 1, 0.5, 0.5],
    [0.5, 0.5, 1, 0.5],
    [0.4, 0.5, 0.5, 1],
  ]
  expect(productLoadings(correlation)).toBeNull()
})

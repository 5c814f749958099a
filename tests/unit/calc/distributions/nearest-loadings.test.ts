import { expect, test } from 'vitest'
import { nearestLoadings } from '@/lib/calc/distributions/nearest-loadings'

const productOf = (loadings: readonly number[]) => loadings.map((a, i) => loadings.map((b, j) => (i === j ? 1 : a * b)))

test('a product is met', () => {
  for (const loadings of [
    [0.7, 0.7],
    [0.7, 0.5, 0.9],
    [0.6, -0.4, 0.8, 0.3],
    [0.7, 0.7, 0.7, 0.7, 0.7, 0.7],
  ]) {
    const [want, got] = [productOf(loadings), productOf(nearestLoadings(productOf(loadings)))]
    want.forEach((row, i) => row.forEach((value, j) => expect(got[i]![j]).toBeCloseTo(value, 4)))
  }
})

test('any other correlation gives loadings within their bounds', () => {
  for (const correlation of [
    [
      [1, 0],
      [0, 1],
    ],
    [
      [1, -0.99],
      [-0.99, 1],
    ],
    [
      [1, 0.9, -0.3],
      [0.9, 1, 0.1],
      [-0.3, 0.1, 1],
    ],
  ]) {
    for (const l of nearestLoadings(correlation)) expect(Math.abs(l)).toBeLessThanOrEqual(0.95)
  }
})

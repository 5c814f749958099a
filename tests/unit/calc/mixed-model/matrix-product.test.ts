import { expect, test } from 'vitest'
import { matrixProduct } from '@/lib/calc/mixed-model/matrix-product'

test('multiplies from left to right and leaves its arguments alone', () => {
  const [a, b] = [
    [
      [1, 2],
      [3, 4],
      [5, 6],
    ],
    [
      [1, 0, 2],
      [0, 3, 1],
    ],
  ]
  expect(matrixProduct(a, b)).toEqual([
    [1, 6, 4],
    [3, 12, 10],
    [5, 18, 16],
  ])
  expect(matrixProduct(a, b, [[1], [1], [1]])).toEqual([[11], [25], [39]])
  expect(a).toEqual([
    [1, 2],
    [3, 4],
    [5, 6],
  ])
})

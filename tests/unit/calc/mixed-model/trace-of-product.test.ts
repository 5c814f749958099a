import { expect, test } from 'vitest'
import { matrixProduct } from '@/lib/calc/mixed-model/matrix-product'
import { traceOfProduct } from '@/lib/calc/mixed-model/trace-of-product'

test('is the sum of the diagonal of the product', () => {
  const [a, b] = [
    [
      [1, -2, 3],
      [4, 5, -6],
    ],
    [
      [7, 8],
      [9, -1],
      [2, 3],
    ],
  ]
  const product = matrixProduct(a, b)
  expect(traceOfProduct(a, b)).toBe(product[0]![0]! + product[1]![1]!)
})

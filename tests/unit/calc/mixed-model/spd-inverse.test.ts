import fc from 'fast-check'
import { expect, test } from 'vitest'
import { matrixProduct } from '@/lib/calc/mixed-model/matrix-product'
import { spdInverse } from '@/lib/calc/mixed-model/spd-inverse'
import { transposed } from '@/tests/support/mixed-trials'

test('the inverse times the matrix is the identity, and the determinant is that of a known one', () => {
  const entry = fc.double({ min: -2, max: 2, noNaN: true })
  fc.assert(
    fc.property(fc.array(fc.array(entry, { minLength: 4, maxLength: 4 }), { minLength: 4, maxLength: 4 }), (a) => {
      const matrix = matrixProduct(a, transposed(a)).map((row, i) => row.map((value, j) => value + (i === j ? 0.5 : 0)))
      const product = matrixProduct(matrix, spdInverse(matrix).inverse)
      product.forEach((row, i) => row.forEach((value, j) => expect(value).toBeCloseTo(i === j ? 1 : 0, 10)))
    }),
  )
  expect(
    spdInverse([
      [4, 2],
      [2, 3],
    ]).logDet,
  ).toBeCloseTo(Math.log(8), 14)
  expect(spdInverse([])).toEqual({ inverse: [], logDet: 0 })
})

test('a matrix that is not definite is refused', () => {
  expect(() =>
    spdInverse([
      [1, 1],
      [1, 1],
    ]),
  ).toThrow('not-definite')
  expect(() =>
    spdInverse([
      [1, 2],
      [2, 1],
    ]),
  ).toThrow('not-definite')
  expect(() => spdInverse([[0]])).toThrow('not-definite')
  expect(() => spdInverse([[NaN]])).toThrow('not-definite')
})

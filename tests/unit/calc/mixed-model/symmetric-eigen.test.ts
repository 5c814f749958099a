import fc from 'fast-check'
import { expect, test } from 'vitest'
import { symmetricEigen } from '@/lib/calc/mixed-model/symmetric-eigen'

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, value, i) => sum + value * b[i]!, 0)

test('A v = λ v, and the vectors are orthonormal', () => {
  const entry = fc.double({ min: -3, max: 3, noNaN: true })
  fc.assert(
    fc.property(fc.array(entry, { minLength: 10, maxLength: 10 }), (values) => {
      const at = (i: number, j: number) => values[(Math.max(i, j) * (Math.max(i, j) + 1)) / 2 + Math.min(i, j)]!
      const matrix = [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => at(i, j)))
      const { values: lambda, vectors } = symmetricEigen(matrix)
      vectors.forEach((v, k) => {
        matrix.forEach((row, i) => expect(dot(row, v)).toBeCloseTo(lambda[k]! * v[i]!, 11))
        vectors.forEach((w, m) => expect(dot(v, w)).toBeCloseTo(k === m ? 1 : 0, 12))
      })
    }),
  )
})

test('a known one, a diagonal one and one of nothing but zeros', () => {
  expect(
    symmetricEigen([
      [2, 1],
      [1, 2],
    ]).values.sort(),
  ).toEqual([expect.closeTo(1, 14), expect.closeTo(3, 14)])
  expect(
    symmetricEigen([
      [5, 0],
      [0, 7],
    ]),
  ).toEqual({
    values: [5, 7],
    vectors: [
      [1, 0],
      [0, 1],
    ],
  })
  expect(
    symmetricEigen([
      [0, 0],
      [0, 0],
    ]).values,
  ).toEqual([0, 0])
})

test('what is not a number is refused, not looped over', () => {
  expect(() =>
    symmetricEigen([
      [1, NaN],
      [NaN, 1],
    ]),
  ).toThrow('no-convergence')
})

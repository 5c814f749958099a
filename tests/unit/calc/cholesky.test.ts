import { expect, test } from 'vitest'
import { cholesky } from '@/lib/calc/cholesky'

const factor = (matrix: number[][], leastPivotShare = 1e-13) => cholesky({ matrix, field: 'matrix', leastPivotShare })

test('the triangle times its transpose is the matrix', () => {
  const matrix = [
    [4, 2, -1],
    [2, 5, 0.5],
    [-1, 0.5, 3],
  ]
  const lower = factor(matrix)
  matrix.forEach((row, i) =>
    row.forEach((value, j) =>
      expect(lower[i]!.reduce((sum, each, m) => sum + each * lower[j]![m]!, 0)).toBeCloseTo(value, 13),
    ),
  )
  expect(lower[0]!.slice(1)).toEqual([0, 0])
  expect(factor([])).toEqual([])
})

test('a matrix that is not definite, or next to it, is refused with the row', () => {
  for (const matrix of [
    [
      [1, 1],
      [1, 1],
    ],
    [
      [1, 2],
      [2, 1],
    ],
    [
      [1, 0],
      [0, 0],
    ],
    [
      [1, 0],
      [0, NaN],
    ],
  ]) {
    expect(() => factor(matrix)).toThrow(
      expect.objectContaining({ code: 'not-possible', facts: { field: 'matrix', value: 1, reason: 'not-definite' } }),
    )
  }
  expect(() =>
    factor(
      [
        [1, 0.99],
        [0.99, 1],
      ],
      0.1,
    ),
  ).toThrow('not-definite')
})

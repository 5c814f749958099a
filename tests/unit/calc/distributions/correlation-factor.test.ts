import { expect, test } from 'vitest'
import { correlationFactor } from '@/lib/calc/distributions/correlation-factor'

test('the triangle times its transpose is the matrix', () => {
  const matrix = [
    [1, 0.6, -0.2],
    [0.6, 1, 0.1],
    [-0.2, 0.1, 1],
  ]
  const lower = correlationFactor(matrix)
  matrix.forEach((row, i) =>
    row.forEach((value, j) =>
      expect(lower[i]!.reduce((sum, each, m) => sum + each * lower[j]![m]!, 0)).toBeCloseTo(value, 14),
    ),
  )
})

test.each([
  [
    'not definite',
    [
      [1, 1],
      [1, 1],
    ],
    'not-definite',
  ],
  [
    'impossible together',
    [
      [1, 0.9, -0.9],
      [0.9, 1, 0.9],
      [-0.9, 0.9, 1],
    ],
    'not-definite',
  ],
  [
    'no correlation',
    [
      [1, 2],
      [2, 1],
    ],
    'out-of-range',
  ],
  [
    'another diagonal',
    [
      [1, 0.5],
      [0.5, 2],
    ],
    'out-of-range',
  ],
  [
    'not symmetrical',
    [
      [1, 0.5],
      [0.4, 1],
    ],
    'out-of-range',
  ],
  ['not square', [[1, 0.5], [0.5]], 'wrong-shape'],
  [
    'not finite',
    [
      [1, NaN],
      [NaN, 1],
    ],
    'not-finite',
  ],
])('%s is refused', (_, matrix, code) => {
  expect(() => correlationFactor(matrix)).toThrow(code)
})

import { expect, test } from 'vitest'
import { quadraticForm } from '@/lib/calc/mixed-model/quadratic-form'

test('weighs a matrix from both sides', () => {
  expect(
    quadraticForm(
      [1, -2],
      [
        [1, 2, 0],
        [3, 4, 5],
      ],
      [1, 1, 2],
    ),
  ).toBe(3 - 2 * 17)
  expect(quadraticForm([], [], [])).toBe(0)
})

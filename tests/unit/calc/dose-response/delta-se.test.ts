import { expect, test } from 'vitest'
import { deltaSe } from '@/lib/calc/dose-response/delta-se'

test('variances add up, with their covariance', () => {
  expect(
    deltaSe(
      [3, 4],
      [
        [1, 0],
        [0, 1],
      ],
    ),
  ).toBe(5)
  expect(
    deltaSe(
      [1, -1],
      [
        [4, 3],
        [3, 9],
      ],
    ),
  ).toBeCloseTo(Math.sqrt(7), 12)
})
test('what rounding makes of nothing is nothing, not a number that is none', () => {
  expect(
    deltaSe(
      [1, -1],
      [
        [1, 1 + 1e-15],
        [1 + 1e-15, 1],
      ],
    ),
  ).toBe(0)
})

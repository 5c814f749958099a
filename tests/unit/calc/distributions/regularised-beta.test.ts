import fc from 'fast-check'
import { expect, test } from 'vitest'
import { regularisedBeta } from '@/lib/calc/distributions/regularised-beta'

test('for whole a and b it is the upper tail of a binomial', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: 1, max: 12 }),
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
      (a, b, x) => {
        const n = a + b - 1
        let sum = 0
        let choose = 1
        for (let k = 0; k <= n; k++) {
          if (k >= a) sum += choose * x ** k * (1 - x) ** (n - k)
          choose = (choose * (n - k)) / (k + 1)
        }
        expect(Math.abs(regularisedBeta({ x, y: 1 - x, a, b }).lower / sum - 1)).toBeLessThan(1e-11)
      },
    ),
    { seed: 4 },
  )
})

test('swapping a with b and x with y swaps the sides', () => {
  const there = regularisedBeta({ x: 0.3, y: 0.7, a: 2.5, b: 0.7 })
  const back = regularisedBeta({ x: 0.7, y: 0.3, a: 0.7, b: 2.5 })
  expect(back).toEqual({ lower: there.upper, upper: there.lower })
})

test('ends are exact; x and y that do not add up are refused', () => {
  expect(regularisedBeta({ x: 0, y: 1, a: 2, b: 3 })).toEqual({ lower: 0, upper: 1 })
  expect(regularisedBeta({ x: 1, y: 0, a: 2, b: 3 })).toEqual({ lower: 1, upper: 0 })
  expect(() => regularisedBeta({ x: 0.5, y: 0.6, a: 2, b: 3 })).toThrow('out-of-range')
})

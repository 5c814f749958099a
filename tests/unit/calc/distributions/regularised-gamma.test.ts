import { expect, test } from 'vitest'
import { regularisedGamma } from '@/lib/calc/distributions/regularised-gamma'

test('for whole a the upper side is a Poisson sum', () => {
  for (const a of [1, 2, 5, 20]) {
    for (const x of [0.1, 1, 4.9, 5.1, 21, 80]) {
      let term = Math.exp(-x)
      let sum = 0
      for (let k = 0; k < a; k++) {
        sum += term
        term *= x / (k + 1)
      }
      expect(Math.abs(regularisedGamma({ a, x }).upper / sum - 1)).toBeLessThan(1e-12)
    }
  }
})

test('the two sides add up to one', () => {
  for (const x of [0, 0.2, 3, 3.6, 50]) {
    const { lower, upper } = regularisedGamma({ a: 2.6, x })
    expect(lower + upper).toBeCloseTo(1, 15)
  }
})

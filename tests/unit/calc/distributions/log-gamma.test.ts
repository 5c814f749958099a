import fc from 'fast-check'
import { expect, test } from 'vitest'
import { logGamma } from '@/lib/calc/distributions/log-gamma'

test('Γ(x + 1) = x Γ(x)', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1e4, noNaN: true }), (x) => {
      const [left, right] = [logGamma(x + 1), logGamma(x) + Math.log(x)]
      expect(Math.abs(left - right)).toBeLessThan(1e-13 * Math.max(1, Math.abs(left)))
    }),
    { seed: 3 },
  )
})

test('factorials', () => {
  expect(logGamma(6)).toBeCloseTo(Math.log(120), 13)
  expect(() => logGamma(0)).toThrow('out-of-range')
})

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { pooledWithAssumed } from '@/lib/calc/analysis/pooled-with-assumed'

test('what is assumed holds until there is anything, counts as 8 degrees of freedom until 8 are there, and then goes', () => {
  expect(pooledWithAssumed({ variance: 0, df: 0 }, 9)).toEqual({ variance: 9, df: 8, from: 'assumed' })
  expect(pooledWithAssumed({ variance: 1, df: 4 }, 4)).toEqual({ variance: 3, df: 12, from: 'both' })
  expect(pooledWithAssumed({ variance: 1, df: 8 }, 4)).toEqual({ variance: 1, df: 8, from: 'own' })
})

test('it lies between the two, and the nearer to the own one the more is known', () => {
  const variance = fc.double({ min: 0, max: 100, noNaN: true })
  fc.assert(
    fc.property(variance, variance, fc.double({ min: 0.01, max: 7, noNaN: true }), (own, assumed, df) => {
      const found = pooledWithAssumed({ variance: own, df }, assumed).variance
      const [low, high] = [Math.min(own, assumed), Math.max(own, assumed)]
      expect(found).toBeGreaterThanOrEqual(low - 1e-12)
      expect(found).toBeLessThanOrEqual(high + 1e-12)
      const more = pooledWithAssumed({ variance: own, df: df + 0.5 }, assumed).variance
      expect(Math.abs(more - own)).toBeLessThanOrEqual(Math.abs(found - own) + 1e-12)
    }),
  )
})

test('a variance below zero and what is no number are refused', () => {
  expect(() => pooledWithAssumed({ variance: -1, df: 3 }, 1)).toThrow('out-of-range')
  expect(() => pooledWithAssumed({ variance: 1, df: -1 }, 1)).toThrow('out-of-range')
  expect(() => pooledWithAssumed({ variance: 1, df: 3 }, NaN)).toThrow('not-finite')
})

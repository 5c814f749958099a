import fc from 'fast-check'
import { expect, test } from 'vitest'
import { normalQuantile } from '@/lib/calc/distributions/normal-quantile'
import { normalTail } from '@/lib/calc/distributions/normal-tail'

test('the quantile undoes the tail in every region', () => {
  fc.assert(
    fc.property(fc.double({ min: -280, max: -0.001, noNaN: true }), (exponent) => {
      const p = 10 ** exponent
      const back = normalTail({ z: normalQuantile({ p, tail: 'upper' }), tail: 'upper' })
      expect(Math.abs(back / p - 1)).toBeLessThan(1e-11)
    }),
    { seed: 2 },
  )
})

test('the median is exactly 0 and the ends are refused', () => {
  expect(normalQuantile({ p: 0.5, tail: 'lower' })).toBe(0)
  expect(() => normalQuantile({ p: 0, tail: 'lower' })).toThrow('out-of-range')
  expect(() => normalQuantile({ p: 1, tail: 'lower' })).toThrow('out-of-range')
})

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { normalTail } from '@/lib/calc/distributions/normal-tail'
import { owensT } from '@/lib/calc/panel/owens-t'

const height = fc.double({ min: -6, max: 6, noNaN: true })

test('at h = 0 it is the angle: atan(a) / 2π', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 10, noNaN: true }),
      (a) => Math.abs(owensT({ h: 0, a }) - Math.atan(a) / (2 * Math.PI)) < 1e-15,
    ),
  )
})

test('at a = 1 it is half of Φ(h) (1 − Φ(h))', () => {
  fc.assert(
    fc.property(height, (h) => {
      const expected = 0.5 * normalTail({ z: h, tail: 'lower' }) * normalTail({ z: h, tail: 'upper' })
      expect(Math.abs(owensT({ h, a: 1 }) / expected - 1)).toBeLessThan(1e-13)
    }),
  )
})

test('a and 1/a belong together: T(h, a) + T(ah, 1/a) = (Φ(h) + Φ(ah)) / 2 − Φ(h) Φ(ah) for h ≥ 0', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 3, noNaN: true }), fc.double({ min: 0.1, max: 10, noNaN: true }), (h, a) => {
      const [one, other] = [normalTail({ z: h, tail: 'lower' }), normalTail({ z: a * h, tail: 'lower' })]
      expect(owensT({ h, a }) + owensT({ h: a * h, a: 1 / a })).toBeCloseTo((one + other) / 2 - one * other, 14)
    }),
  )
})

test('the sign of h does not matter', () => {
  expect(owensT({ h: -1.3, a: 0.7 })).toBe(owensT({ h: 1.3, a: 0.7 }))
})

test('far out and outside', () => {
  expect(owensT({ h: 40, a: 10 })).toBeGreaterThanOrEqual(0)
  expect(() => owensT({ h: NaN, a: 1 })).toThrow('not-finite')
  expect(() => owensT({ h: 0, a: -0.1 })).toThrow('out-of-range')
})

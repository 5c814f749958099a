import fc from 'fast-check'
import { expect, test } from 'vitest'
import { deltaE2000 } from '@/lib/calc/colour/delta-e2000'

const axis = fc.oneof(fc.constant(0), fc.double({ min: -128, max: 128, noNaN: true }))
const colour = fc.record({ lightness: fc.double({ min: 0, max: 100, noNaN: true }), a: axis, b: axis })

test('it is the same both ways round, and never below zero', () => {
  fc.assert(
    fc.property(colour, colour, (one, other) => {
      const there = deltaE2000(one, other)
      expect(there).toBeGreaterThanOrEqual(0)
      expect(Math.abs(deltaE2000(other, one) - there)).toBeLessThanOrEqual(1e-9 * Math.max(1, there))
    }),
  )
})

test('a colour does not differ from itself', () => {
  fc.assert(fc.property(colour, (one) => deltaE2000(one, { ...one }) === 0))
})

test('colours that differ by little differ little, but for opposite hues', () => {
  fc.assert(
    fc.property(colour, (one) => {
      const near = { ...one, lightness: Math.min(100, one.lightness + 1e-6) }
      expect(deltaE2000(one, near)).toBeLessThan(1e-5)
    }),
  )
})

test('of greys only lightness counts: (L₂ − L₁) / S_L', () => {
  // mean 50: S_L is 1
  expect(deltaE2000({ lightness: 48, a: 0, b: 0 }, { lightness: 52, a: 0, b: 0 })).toBeCloseTo(4, 12)
  // mean 70: S_L = 1 + 0.015 · 400 / √420
  expect(deltaE2000({ lightness: 65, a: 0, b: 0 }, { lightness: 75, a: 0, b: 0 })).toBeCloseTo(
    10 / (1 + 6 / Math.sqrt(420)),
    12,
  )
})

test('black, white and what lies outside are answered or refused, never NaN', () => {
  expect(deltaE2000({ lightness: 0, a: 0, b: 0 }, { lightness: 100, a: 0, b: 0 })).toBeCloseTo(100, 9)
  expect(() => deltaE2000({ lightness: 50, a: 0, b: 0 }, { lightness: 50, a: 0, b: Infinity })).toThrow('b2')
  expect(() => deltaE2000({ lightness: -1, a: 0, b: 0 }, { lightness: 50, a: 0, b: 0 })).toThrow('lightness1')
})

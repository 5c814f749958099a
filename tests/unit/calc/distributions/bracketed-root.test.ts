import { expect, test } from 'vitest'
import { bracketedRoot } from '@/lib/calc/distributions/bracketed-root'

test('finds smooth, flat and steep roots', () => {
  expect(bracketedRoot({ f: (x) => x * x - 2, low: 0, high: 2, tolerance: 1e-15 })).toBeCloseTo(Math.SQRT2, 14)
  expect(bracketedRoot({ f: (x) => (x - 1) ** 9, low: -3, high: 4, tolerance: 1e-12 })).toBeCloseTo(1, 1)
  expect(bracketedRoot({ f: (x) => Math.atan(1e6 * (x - 0.3)), low: 0, high: 1, tolerance: 1e-14 })).toBeCloseTo(
    0.3,
    12,
  )
})

test('equal signs and a function that is not a number are refused', () => {
  expect(() => bracketedRoot({ f: (x) => x * x + 1, low: -1, high: 1, tolerance: 1e-9 })).toThrow('not-possible')
  expect(() => bracketedRoot({ f: (x) => (x === 0.5 ? NaN : x - 0.4), low: 0, high: 1, tolerance: 1e-9 })).toThrow(
    'not-finite',
  )
})

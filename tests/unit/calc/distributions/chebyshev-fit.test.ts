import { expect, test } from 'vitest'
import { chebyshevFit } from '@/lib/calc/distributions/chebyshev-fit'

test('a polynomial below the number of points is met exactly, a smooth function nearly', () => {
  const cubic = (x: number) => 2 - x + 0.5 * x ** 3
  const fitted = chebyshevFit({ f: cubic, low: -1, high: 4, points: 4 })
  const wave = chebyshevFit({ f: Math.sin, low: 0, high: 6, points: 26 })
  for (const x of [-1, 0, 0.7, 3.99]) expect(fitted(x)).toBeCloseTo(cubic(x), 12)
  for (const x of [0, 1, 2.2, 6]) expect(wave(x)).toBeCloseTo(Math.sin(x), 12)
})

test('an empty interval, one point and a function that fails are refused', () => {
  expect(() => chebyshevFit({ f: Math.sin, low: 2, high: 2, points: 9 })).toThrow('"high"')
  expect(() => chebyshevFit({ f: Math.sin, low: 0, high: 2, points: 1 })).toThrow('"points"')
  expect(() => chebyshevFit({ f: () => NaN, low: 0, high: 2, points: 9 })).toThrow('not-finite')
})

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { huberFit } from '@/lib/calc/fitting/huber-fit'

const x = [1, 2, 3, 4, 5, 6, 7, 8].map((at) => [at])
const wobble = [0.1, -0.2, 0.15, -0.05, 0.2, -0.1, 0.05, -0.15]
const y = x.map(([at], i) => 3 * at! + wobble[i]!)

test('without a bad reading it is near least squares, and every reading counts in full', () => {
  const { coefficients, weights } = huberFit({ x, y })
  expect(coefficients[0]).toBeCloseTo(3, 1)
  expect(weights.filter((weight) => weight > 0.6)).toHaveLength(8)
})

test('one reading, however bad, moves it little and is set aside in weight', () =>
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 7 }), fc.constantFrom(-1e6, -50, 50, 1e6), (at, off) => {
      const { coefficients, weights } = huberFit({ x, y: y.map((value, i) => (i === at ? value + off : value)) })
      expect(Math.abs(coefficients[0]! - 3)).toBeLessThan(0.2)
      expect(weights[at]).toBeLessThan(0.05)
    }),
  ))

test('readings that agree exactly are fitted exactly, with one among them that does not', () => {
  const exact = x.map(([at]) => 2 * at!)
  const fit = huberFit({ x, y: exact.map((value, i) => (i === 3 ? value + 100 : value)) })
  expect(fit.coefficients[0]).toBeCloseTo(2, 6)
  expect(fit.weights[3]).toBeLessThan(1e-6)
})

test('as many coefficients as readings, and columns that say the same, are refused', () => {
  expect(() => huberFit({ x: [[1]], y: [1] })).toThrow(expect.objectContaining({ code: 'wrong-shape' }))
  expect(() => huberFit({ x: x.map(([at]) => [at!, 2 * at!]), y })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'rank-deficient' }) }),
  )
  expect(() => huberFit({ x, y: y.map((value, i) => (i === 0 ? Number.NaN : value)) })).toThrow(
    expect.objectContaining({ code: 'not-finite' }),
  )
})

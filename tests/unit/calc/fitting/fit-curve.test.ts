import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fitCurve } from '@/lib/calc/fitting/fit-curve'

/** a·exp(−b·x) */
const decay = (x: number, [a = 0, b = 0]: readonly number[]) => {
  const left = Math.exp(-b * x)
  return { value: a * left, gradient: [left, -a * x * left] }
}
const x = [0, 1, 2, 3, 5, 8]

test('a curve without scatter is found again, from a start that is only like it', () =>
  fc.assert(
    fc.property(fc.double({ min: 1, max: 50, noNaN: true }), fc.double({ min: 0.05, max: 1, noNaN: true }), (a, b) => {
      const fit = fitCurve({ x, y: x.map((at) => decay(at, [a, b]).value), start: [1.5 * a, 0.5 * b], curve: decay })
      expect(fit.parameters[0]! / a).toBeCloseTo(1, 8)
      expect(fit.parameters[1]! / b).toBeCloseTo(1, 8)
    }),
  ))

test('a straight line comes out as by least squares, with its covariance', () => {
  const y = [1.1, 2.9, 5.2, 7.1, 10.8, 17.0]
  const fit = fitCurve({
    x,
    y,
    start: [0, 1],
    curve: (at, [a = 0, b = 0]) => ({ value: a + b * at, gradient: [1, at] }),
  })
  const meanX = x.reduce((s, v) => s + v, 0) / 6
  const meanY = y.reduce((s, v) => s + v, 0) / 6
  const sxx = x.reduce((s, v) => s + (v - meanX) ** 2, 0)
  const slope = x.reduce((s, v, i) => s + (v - meanX) * (y[i]! - meanY), 0) / sxx
  expect(fit.parameters[1]).toBeCloseTo(slope, 9)
  const rss = x.reduce((s, v, i) => s + (y[i]! - meanY - slope * (v - meanX)) ** 2, 0)
  expect(fit.residualSumSquares).toBeCloseTo(rss, 9)
  expect(fit.covariance[1]![1]).toBeCloseTo(rss / 4 / sxx, 9)
  expect(fit.residualDf).toBe(4)
})

test('a parameter that the points leave open is refused', () =>
  expect(() =>
    fitCurve({
      x,
      y: x.map((at) => at),
      start: [1, 1],
      curve: (at, [a = 0, b = 0]) => ({ value: (a + b) * at, gradient: [at, at] }),
    }),
  ).toThrow(
    expect.objectContaining({
      code: 'not-possible',
      facts: expect.objectContaining({ reason: 'curve-not-determined' }),
    }),
  ))

test('a curve whose parameter runs away ends with a word, not with a hang', () =>
  expect(() =>
    fitCurve({ x, y: x.map((at) => at), start: [1, 1], curve: (at, [a = 0, b = 0]) => decay(at, [a, Math.exp(b)]) }),
  ).toThrow(expect.objectContaining({ code: expect.stringMatching(/no-convergence|not-possible/) })))

test('too few points, uneven lists and values that are none are refused', () => {
  const q = { x: [1, 2, 3], y: [1, 2, 3], start: [1, 1], curve: decay }
  expect(() => fitCurve({ ...q, x: [1, 2], y: [1, 2] })).toThrow(expect.objectContaining({ code: 'empty' }))
  expect(() => fitCurve({ ...q, y: [1, 2] })).toThrow(expect.objectContaining({ code: 'wrong-shape' }))
  expect(() => fitCurve({ ...q, y: [1, Number.NaN, 2] })).toThrow(expect.objectContaining({ code: 'not-finite' }))
  expect(() => fitCurve({ ...q, start: [Number.NaN, 1] })).toThrow(expect.objectContaining({ code: 'not-finite' }))
})

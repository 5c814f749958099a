import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ratioToControl, type RatioMethod } from '@/lib/calc/comparison/ratio-to-control'
import { expectRefusal } from '@/tests/support/arm-rows'

const methods = ['fieller', 'delta-log', 'log-means', 'paired-log'] as const
const positive = fc.integer({ min: 100, max: 900 }).map((value) => value / 8)
const values = fc.array(positive, { minLength: 4, maxLength: 4 }).filter((list) => new Set(list).size > 1)

test('the interval holds the ratio, and neither changes with the unit', () => {
  fc.assert(
    fc.property(fc.constantFrom<RatioMethod>(...methods), values, values, (method, control, treated) => {
      fc.pre(new Set(control.map((value, i) => value / treated[i]!)).size > 1)
      const got = ratioToControl({ method, control, treated, confidence: 0.95 })
      const inGrams = ratioToControl({
        method,
        control: control.map((v) => v * 1000),
        treated: treated.map((v) => v * 1000),
        confidence: 0.95,
      })
      expect(inGrams.ratio).toBeCloseTo(got.ratio, 9)
      expect(inGrams.bounded).toBe(got.bounded)
      fc.pre(got.bounded)
      expect(got.low!).toBeLessThan(got.ratio)
      expect(got.high!).toBeGreaterThan(got.ratio)
      expect(got.highPct!).toBeCloseTo(100 * (got.high! - 1), 9)
    }),
  )
})
test('Fieller’s limits are the ratios that a t test would just reject', () => {
  const [control, treated] = [
    [10, 12, 11, 13],
    [14, 15, 13, 17],
  ]
  const { low, high, df } = ratioToControl({ method: 'fieller', control, treated, confidence: 0.95 })
  const mean = (list: number[]) => list.reduce((sum, value) => sum + value, 0) / list.length
  const squares = (list: number[]) => list.reduce((sum, value) => sum + (value - mean(list)) ** 2, 0)
  const variance = (squares(control) + squares(treated)) / df / 4
  for (const limit of [low!, high!]) {
    // t of 6 df at 0.975 is 2.446912 in every table
    expect(Math.abs(mean(treated) - limit * mean(control)) / Math.sqrt(variance * (1 + limit * limit))).toBeCloseTo(
      2.446912,
      5,
    )
  }
})
test('a control that cannot be told from zero gives no limits, and that is said', () => {
  const got = ratioToControl({ method: 'fieller', control: [0.1, 9, -8], treated: [5, 6, 7], confidence: 0.95 })
  expect(got).toMatchObject({ bounded: false, low: null, high: null, lowPct: null, highPct: null })
  expect(got.g).toBeGreaterThanOrEqual(1)
})
test('turned round, an interval by logs is turned over', () => {
  fc.assert(
    fc.property(
      fc.constantFrom<RatioMethod>('delta-log', 'log-means', 'paired-log'),
      values,
      values,
      (method, control, treated) => {
        fc.pre(new Set(control.map((value, i) => value / treated[i]!)).size > 1)
        const there = ratioToControl({ method, control, treated, confidence: 0.9 })
        const back = ratioToControl({ method, control: treated, treated: control, confidence: 0.9 })
        expect(back.ratio * there.ratio).toBeCloseTo(1, 9)
        expect(back.low! * there.high!).toBeCloseTo(1, 6)
      },
    ),
  )
})
test('one loaf, identical values, a negative control and broken pairs are refused', () => {
  const of = (method: RatioMethod, control: number[], treated: number[]) => () =>
    ratioToControl({ method, control, treated, confidence: 0.95 })
  for (const method of methods) {
    expectRefusal(of(method, [1], [1, 2]), 'empty')
    expectRefusal(of(method, [3, 3], [4, 4]), 'not-possible', 'zero-variance')
    expectRefusal(of(method, [-3, -2], [4, 5]), 'out-of-range')
    expectRefusal(of(method, [1, 2], [4, NaN]), 'not-finite')
  }
  expectRefusal(of('paired-log', [1, 2, 3], [4, 5]), 'wrong-shape')
  expectRefusal(of('log-means', [1, 2], [0, 5]), 'out-of-range')
  // an interval too wide for a number is no interval
  expectRefusal(of('paired-log', [1e-90, 1e90], [1e90, 2e-90]), 'not-finite')
})

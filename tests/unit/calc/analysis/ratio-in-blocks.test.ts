import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ratioInBlocks } from '@/lib/calc/analysis/ratio-in-blocks'

const arms = ['control', 'b']
const rowsOf = (control: readonly number[], b: readonly number[]) =>
  Object.entries({ control, b }).flatMap(([arm, values]) => values.map((y, i) => ({ arm, block: `d${i}`, y })))
const ratioOf = (control: readonly number[], b: readonly number[]) =>
  ratioInBlocks({ rows: rowsOf(control, b), arms, confidence: 0.95 })

test('a ratio is in the set just where arm less so many times the control is within t standard errors of zero', () => {
  const value = fc.integer({ min: -40, max: 60 })
  fc.assert(
    fc.property(
      fc.array(value, { minLength: 6, maxLength: 6 }),
      fc.double({ min: -6, max: 6, noNaN: true }),
      (y, r) => {
        const { t, comparisons } = ratioOf(y.slice(0, 3), y.slice(3))
        const [one] = comparisons
        if (t === null || one!.set === null) return
        const { controlMean, armMean, low, high, set } = one!
        const [vx, vy, v] = [one!.controlVariance!, one!.armVariance!, one!.covariance!]
        const room = t * t * (vy - 2 * r * v + r * r * vx) - (armMean - r * controlMean) ** 2
        // at the very edge rounding decides
        if (Math.abs(room) < 1e-6) return
        if (set === 'interval') expect(low! <= r && r <= high!).toBe(room > 0)
        if (set === 'everything') expect(room).toBeGreaterThan(0)
      },
    ),
  )
})

test('limits are there just where the control’s mean is clear of zero', () => {
  expect(ratioOf([20, 25, 21], [30, 24, 28]).comparisons[0]).toMatchObject({ set: 'interval' })
  const outside = ratioOf([0.5, -0.4, 0.3], [30, 34, 28]).comparisons[0]!
  expect(outside).toMatchObject({ set: 'outside', low: null, high: null })
  expect(outside.g).toBeGreaterThan(1)
  expect(ratioOf([0.5, -0.4, 0.3], [-0.2, 0.4, -0.1]).comparisons[0]).toMatchObject({ set: 'everything', low: null })
})

test('a control of zero has no ratio, and figures without error have no limits', () => {
  expect(ratioOf([1, -1, 0], [5, 7, 9]).comparisons[0]).toMatchObject({ ratio: null, g: null, low: null })
  expect(ratioOf([20, 21, 22], [40, 41, 42])).toMatchObject({
    noInterval: 'zero-variance',
    t: null,
    comparisons: [{ set: null, low: null }],
  })
  expect(ratioOf([20], [40])).toMatchObject({ noInterval: 'no-residual-df', comparisons: [{ ratio: 2, low: null }] })
})

test('no day, and no figure, are refused', () => {
  expect(() => ratioOf([], [1, 2])).toThrow('no-day-counted')
  expect(() => ratioOf([NaN], [1])).toThrow('not-finite')
  expect(() => ratioInBlocks({ rows: rowsOf([1, 2], [3, 4]), arms, confidence: 0 })).toThrow('confidence')
})

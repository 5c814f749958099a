import fc from 'fast-check'
import { expect, test } from 'vitest'
import { judgeLogRatios } from '@/lib/calc/analysis/judge-log-ratios'
import { forLong } from '@/tests/support/long'

const rule = {
  arms: ['control', 'b'],
  question: 'gain',
  goodDirection: 'larger',
  marginPct: 20,
  confidence: 0.95,
  unit: 'arm-days',
  correlation: 'model',
} as const
const rowsOf = (control: readonly number[], b: readonly number[]) =>
  Object.entries({ control, b }).flatMap(([arm, values]) => values.map((y, i) => ({ arm, block: `d${i}`, y })))

test('the ratio is that of geometric means, and turning the doughs round turns it over', () => {
  const [control, b] = [
    [20, 25, 21],
    [30, 24, 28],
  ]
  const found = judgeLogRatios({ ...rule, rows: rowsOf(control, b) })
  const [one] = found.comparisons
  expect(one!.ratio).toBeCloseTo(((30 * 24 * 28) / (20 * 25 * 21)) ** (1 / 3), 12)
  expect(found.means[0]!.mean).toBeCloseTo((20 * 25 * 21) ** (1 / 3), 10)
  const [other] = judgeLogRatios({ ...rule, rows: rowsOf(b, control) }).comparisons
  expect(other!.ratio).toBeCloseTo(1 / one!.ratio, 12)
  expect(other!.low).toBeCloseTo(1 / one!.high!, 10)
  expect(other!.own!.high).toBeCloseTo(1 / one!.own!.low!, 10)
})

test('an arm-day value is the mean of its doughs’ logs', () => {
  const doubled = [...rowsOf([20, 25, 21], [30, 24, 28]), { arm: 'b', block: 'd0', y: 35 }]
  const lost = [...doubled, { arm: 'b', block: 'd1' }]
  const [one] = judgeLogRatios({ ...rule, rows: lost }).comparisons
  const days = [Math.sqrt(30 * 35) / 20, 24 / 25, 28 / 21]
  expect(one!.own!.ratio).toBeCloseTo((days[0]! * days[1]! * days[2]!) ** (1 / 3), 12)
})

test('a measure’s unit changes nothing', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 20, max: 40 }), { minLength: 8, maxLength: 8 }),
      fc.constantFrom(0.001, 3, 2500),
      (values, scale) => {
        const rows = rowsOf(values.slice(0, 4), values.slice(4))
        const scaled = rows.map((row) => ({ ...row, y: row.y * scale }))
        const [one] = judgeLogRatios({ ...rule, rows }).comparisons
        const [two] = judgeLogRatios({ ...rule, rows: scaled }).comparisons
        expect(two!.ratio).toBeCloseTo(one!.ratio, 9)
        expect(two!.verdict).toBe(one!.verdict)
        expect(two!.low === null).toBe(one!.low === null)
        if (one!.low !== null) expect(two!.low).toBeCloseTo(one!.low, 7)
      },
    ),
    { numRuns: forLong(50, 1000) },
  )
})

// Around ratios of exactly so much, with next to no error: 1 − m to 1 + m and not 1 / (1 + m) to 1 + m.
const near = (ratio: number) => rowsOf([2000, 2100, 2200], [2000 * ratio, 2100 * ratio * 1.0001, 2200 * ratio * 0.9999])
test.each([
  { ratio: 0.81, same: 'same', noWorse: 'no-worse', gain: 'worse', clearly: false },
  { ratio: 0.79, same: 'different', noWorse: 'worse', gain: 'worse', clearly: true },
  { ratio: 1.19, same: 'same', noWorse: 'no-worse', gain: 'no-worthwhile-difference', clearly: false },
  { ratio: 1.21, same: 'different', noWorse: 'no-worse', gain: 'better', clearly: true },
])('a margin of 20 % stays a ratio, at $ratio', ({ ratio, same, noWorse, gain, clearly }) => {
  const rows = near(ratio)
  const verdictOf = (question: 'gain' | 'no-worse' | 'same') =>
    judgeLogRatios({ ...rule, question, rows }).comparisons[0]!
  expect(verdictOf('same').verdict).toBe(same)
  expect(verdictOf('no-worse').verdict).toBe(noWorse)
  expect(verdictOf('gain')).toMatchObject({ verdict: gain, clearly })
})

test('where smaller is better the worthwhile ratio is 1 − m', () => {
  const verdictAt = (ratio: number) =>
    judgeLogRatios({ ...rule, goodDirection: 'smaller', rows: near(ratio) }).comparisons[0]!.verdict
  expect([verdictAt(0.79), verdictAt(0.81), verdictAt(1.19)]).toEqual(['better', 'no-worthwhile-difference', 'worse'])
})

test.each([
  [1.3, [1.01, 1.02, 1.03]],
  // logarithms of a millionth, whose rounding is that of 1
  [1.000001, [1.000001, 1.000002, 1.000003]],
  [1.3, [2410, 2520, 2503]],
])('doughs at %d times the control on every day show no error: no interval, no verdict', (ratio, control) => {
  const found = judgeLogRatios({
    ...rule,
    rows: rowsOf(
      control,
      control.map((y) => y * ratio),
    ),
  })
  expect(found.noInterval).toBe('zero-variance')
  expect(found.comparisons[0]).toMatchObject({ low: null, high: null, verdict: null })
})

test('what has no logarithm, and a margin that is no share, are refused', () => {
  expect(() => judgeLogRatios({ ...rule, rows: rowsOf([20, 25], [30, 0]) })).toThrow(/out-of-range.*rows\[3\]\.y/)
  expect(() => judgeLogRatios({ ...rule, rows: rowsOf([20, 25], [30, NaN]) })).toThrow(/not-finite.*rows\[3\]\.y/)
  expect(() => judgeLogRatios({ ...rule, marginPct: 100, rows: rowsOf([20, 25], [30, 24]) })).toThrow('marginPct')
  expect(() => judgeLogRatios({ ...rule, rows: [] })).toThrow('no-day-counted')
})

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { tTest, type TTestKind } from '@/lib/calc/comparison/t-test'
import { expectRefusal, reading } from '@/tests/support/arm-rows'

const values = fc.array(reading, { minLength: 4, maxLength: 4 }).filter((list) => new Set(list).size > 1)
const kinds = fc.constantFrom<TTestKind>('student', 'welch', 'paired')

test('turned round, the difference and its interval change their sign; moved, nothing changes', () => {
  fc.assert(
    fc.property(kinds, values, values, reading, (kind, control, treated, by) => {
      fc.pre(kind !== 'paired' || new Set(control.map((value, i) => value - treated[i]!)).size > 1)
      const there = tTest({ kind, control, treated, confidence: 0.9 })
      const back = tTest({ kind, control: treated, treated: control, confidence: 0.9 })
      expect(back.difference).toBeCloseTo(-there.difference, 9)
      expect(back.low).toBeCloseTo(-there.high, 6)
      expect(back.p).toBeCloseTo(there.p, 9)
      const moved = tTest({
        kind,
        control: control.map((y) => y + by),
        treated: treated.map((y) => y + by),
        confidence: 0.9,
      })
      expect(moved.t).toBeCloseTo(there.t, 6)
      expect(moved.df).toBeCloseTo(there.df, 6)
    }),
  )
})
test('the interval leaves zero out just when p is below one minus the confidence', () => {
  fc.assert(
    fc.property(kinds, values, values, (kind, control, treated) => {
      fc.pre(kind !== 'paired' || new Set(control.map((value, i) => value - treated[i]!)).size > 1)
      const { low, high, p } = tTest({ kind, control, treated, confidence: 0.9 })
      fc.pre(Math.abs(p - 0.1) > 1e-9)
      expect(low > 0 || high < 0).toBe(p < 0.1)
    }),
  )
})
test('equal numbers: Welch’s t is Student’s, with no more degrees of freedom', () => {
  fc.assert(
    fc.property(values, values, (control, treated) => {
      const student = tTest({ kind: 'student', control, treated, confidence: 0.95 })
      const welch = tTest({ kind: 'welch', control, treated, confidence: 0.95 })
      expect(welch.t).toBeCloseTo(student.t, 8)
      expect(welch.df).toBeLessThanOrEqual(student.df + 1e-9)
    }),
  )
})
test('one side may be all alike for Welch, and its degrees of freedom are then the other side’s', () => {
  expect(tTest({ kind: 'welch', control: [5, 5, 5], treated: [1, 2, 4], confidence: 0.95 }).df).toBe(2)
})
test('one loaf, identical values and broken pairs are refused', () => {
  const q = { kind: 'student' as const, confidence: 0.95 }
  expectRefusal(() => tTest({ ...q, control: [1], treated: [1, 2] }), 'empty')
  expectRefusal(() => tTest({ ...q, control: [1, 2], treated: [] }), 'empty')
  expectRefusal(() => tTest({ ...q, control: [3, 3], treated: [4, 4] }), 'not-possible', 'zero-variance')
  expectRefusal(() => tTest({ ...q, kind: 'welch', control: [3, 3], treated: [4, 4] }), 'not-possible', 'zero-variance')
  expectRefusal(
    () => tTest({ ...q, kind: 'paired', control: [1, 2], treated: [2, 3] }),
    'not-possible',
    'zero-variance',
  )
  expectRefusal(() => tTest({ ...q, kind: 'paired', control: [1, 2], treated: [2, 3, 4] }), 'wrong-shape')
  expectRefusal(() => tTest({ ...q, control: [1, NaN], treated: [2, 3] }), 'not-finite')
})

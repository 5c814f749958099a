import fc from 'fast-check'
import { expect, test } from 'vitest'
import { tTest } from '@/lib/calc/comparison/t-test'
import { welchAnova } from '@/lib/calc/comparison/welch-anova'
import { armRows, eachArmVaries, expectRefusal, moved, reading, tenThousand } from '@/tests/support/arm-rows'

const near = (got: number, expected: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(1e-8 * (1 + Math.abs(expected)))

test('F and its degrees of freedom do not change when values are moved, stretched or told in another order', () => {
  fc.assert(
    fc.property(armRows, reading, fc.constantFrom(-8, 0.25, 3), (rows, by, times) => {
      fc.pre(eachArmVaries(rows))
      const { f, df2 } = welchAnova({ rows, confidence: 0.95 })
      for (const other of [moved(rows, by, times), [...rows].reverse()]) {
        near(welchAnova({ rows: other, confidence: 0.95 }).f, f)
        near(welchAnova({ rows: other, confidence: 0.95 }).df2, df2)
      }
    }),
  )
})
test('two arms: F is the square of Welch’s t, with the same degrees of freedom', () => {
  const values = fc.array(reading, { minLength: 2, maxLength: 8 }).filter((list) => new Set(list).size > 1)
  fc.assert(
    fc.property(values, values, (control, treated) => {
      const rows = [...control.map((y) => ({ arm: 'a', y })), ...treated.map((y) => ({ arm: 'b', y }))]
      const { t, df, p } = tTest({ kind: 'welch', control, treated, confidence: 0.95 })
      const anova = welchAnova({ rows, confidence: 0.95 })
      near(anova.f, t * t)
      near(anova.df2, df)
      expect(anova.p).toBeCloseTo(p, 8)
    }),
  )
})
test('ten thousand values are no matter', () =>
  expect(welchAnova({ rows: tenThousand(2500), confidence: 0.95 }).df1).toBe(2499))
test('an arm of one value, or of identical values, is refused and named', () => {
  const rows = [
    { arm: 'a', y: 1 },
    { arm: 'a', y: 2 },
    { arm: 'b', y: 4 },
  ]
  expectRefusal(() => welchAnova({ rows, confidence: 0.95 }), 'empty', 'few-values')
  const alike = [...rows, { arm: 'b', y: 4 }]
  expectRefusal(() => welchAnova({ rows: alike, confidence: 0.95 }), 'not-possible', 'zero-variance')
  expect(() => welchAnova({ rows: alike, confidence: 0.95 })).toThrow('rows (b)')
})

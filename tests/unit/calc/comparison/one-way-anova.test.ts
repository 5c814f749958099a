import fc from 'fast-check'
import { expect, test } from 'vitest'
import { oneWayAnova } from '@/lib/calc/comparison/one-way-anova'
import { tTest } from '@/lib/calc/comparison/t-test'
import { armRows, eachArmVaries, expectRefusal, moved, reading, tenThousand } from '@/tests/support/arm-rows'

test('F does not change when values are moved, stretched or told in another order', () => {
  fc.assert(
    fc.property(armRows, reading, fc.constantFrom(-8, 0.25, 3), (rows, by, times) => {
      fc.pre(eachArmVaries(rows))
      const { f } = oneWayAnova({ rows, confidence: 0.95 })
      expect(oneWayAnova({ rows: moved(rows, by, times), confidence: 0.95 }).f).toBeCloseTo(f, 6)
      expect(oneWayAnova({ rows: [...rows].reverse(), confidence: 0.95 }).f).toBeCloseTo(f, 6)
    }),
  )
})
test('two arms: F is the square of Student’s t', () => {
  fc.assert(
    fc.property(
      fc.array(reading, { minLength: 2, maxLength: 8 }),
      fc.array(reading, { minLength: 2, maxLength: 8 }),
      (control, treated) => {
        fc.pre(new Set(control).size > 1)
        const rows = [...control.map((y) => ({ arm: 'a', y })), ...treated.map((y) => ({ arm: 'b', y }))]
        const { t, p } = tTest({ kind: 'student', control, treated, confidence: 0.95 })
        const anova = oneWayAnova({ rows, confidence: 0.95 })
        expect(Math.abs(anova.f - t * t)).toBeLessThanOrEqual(1e-9 * (1 + t * t))
        expect(anova.p).toBeCloseTo(p, 9)
      },
    ),
  )
})
test('ten thousand values, in few arms and in many', () => {
  expect(oneWayAnova({ rows: tenThousand(4), confidence: 0.95 }).df2).toBe(9996)
  expect(oneWayAnova({ rows: tenThousand(5000), confidence: 0.95 }).df1).toBe(4999)
})
test('identical values, one value in every arm and one arm are refused', () => {
  const of = (arms: number[][]) => () =>
    oneWayAnova({ rows: arms.flatMap((list, i) => list.map((y) => ({ arm: String(i), y }))), confidence: 0.95 })
  expectRefusal(
    of([
      [5, 5],
      [5, 5],
    ]),
    'not-possible',
    'zero-variance',
  )
  expectRefusal(
    of([
      [0.1, 0.1],
      [0.3, 0.3],
    ]),
    'not-possible',
    'zero-variance',
  )
  expectRefusal(of([[1], [2], [3]]), 'not-possible', 'no-residual-df')
  expectRefusal(of([[1, 2, 3]]), 'not-possible', 'one-arm')
  expectRefusal(of([]), 'empty')
  expectRefusal(
    of([
      [1, Infinity],
      [2, 3],
    ]),
    'not-finite',
  )
})

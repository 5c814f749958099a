import fc from 'fast-check'
import { expect, test } from 'vitest'
import { tTest } from '@/lib/calc/comparison/t-test'
import { tukeyKramer } from '@/lib/calc/comparison/tukey-kramer'
import { armRows, eachArmVaries, expectRefusal, moved, reading, tenThousand } from '@/tests/support/arm-rows'
import { forLong } from '@/tests/support/long'

const runs = { numRuns: forLong(15, 300) }

test('two arms: the same as Student’s t', () => {
  const values = fc.array(reading, { minLength: 2, maxLength: 6 }).filter((list) => new Set(list).size > 1)
  fc.assert(
    fc.property(values, values, (control, treated) => {
      const rows = [...control.map((y) => ({ arm: 'a', y })), ...treated.map((y) => ({ arm: 'b', y }))]
      const student = tTest({ kind: 'student', control, treated, confidence: 0.95 })
      const [pair] = tukeyKramer({ rows, confidence: 0.95 }).pairs
      const scale = 1 + Math.abs(student.low) + Math.abs(student.high)
      expect(Math.abs(pair!.low - student.low) / scale).toBeLessThan(1e-8)
      expect(Math.abs(pair!.high - student.high) / scale).toBeLessThan(1e-8)
      expect(pair!.pAdjusted).toBeCloseTo(student.p, 7)
    }),
    runs,
  )
})
test('every pair is there once, and moving and stretching all values keeps each p', () => {
  fc.assert(
    fc.property(armRows, (rows) => {
      fc.pre(eachArmVaries(rows))
      const { pairs } = tukeyKramer({ rows, confidence: 0.95 })
      const k = new Set(rows.map((row) => row.arm)).size
      expect(new Set(pairs.map(({ from, to }) => [from, to].sort().join())).size).toBe((k * (k - 1)) / 2)
      const other = tukeyKramer({ rows: moved(rows, 100, 3), confidence: 0.95 }).pairs
      pairs.forEach((pair, i) => expect(other[i]!.pAdjusted).toBeCloseTo(pair.pAdjusted, 6))
    }),
    runs,
  )
})
test('blocks in which arms are not in the same proportions are refused', () => {
  const rows = [
    ['a', '1'],
    ['b', '1'],
    ['a', '2'],
    ['b', '2'],
    ['a', '2'],
  ].map(([arm, block], i) => ({ arm: arm!, block: block!, y: i * i }))
  expectRefusal(() => tukeyKramer({ rows, confidence: 0.95 }), 'not-possible', 'unbalanced-blocks')
  expect(tukeyKramer({ rows: rows.slice(0, 4), confidence: 0.95 }).df).toBe(1)
})
test('ten thousand values are no matter, more than twenty arms are refused', () => {
  expect(tukeyKramer({ rows: tenThousand(4), confidence: 0.95 }).df).toBe(9996)
  expectRefusal(() => tukeyKramer({ rows: tenThousand(21), confidence: 0.95 }), 'out-of-range', 'many-arms')
})
test('nothing, one arm and identical values are refused', () => {
  expectRefusal(() => tukeyKramer({ rows: [], confidence: 0.95 }), 'empty')
  expectRefusal(
    () =>
      tukeyKramer({
        rows: [
          { arm: 'a', y: 1 },
          { arm: 'a', y: 2 },
        ],
        confidence: 0.95,
      }),
    'not-possible',
    'one-arm',
  )
  const alike = ['a', 'a', 'b', 'b'].map((arm) => ({ arm, y: 5 }))
  expectRefusal(() => tukeyKramer({ rows: alike, confidence: 0.95 }), 'not-possible', 'zero-variance')
})

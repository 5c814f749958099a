import fc from 'fast-check'
import { expect, test } from 'vitest'
import { armsInBlocks } from '@/lib/calc/comparison/arms-in-blocks'
import { tTest } from '@/lib/calc/comparison/t-test'
import { expectRefusal, moved, reading, tenThousand } from '@/tests/support/arm-rows'

const values = fc.array(reading, { minLength: 5, maxLength: 5 })

test('two arms in complete blocks are the paired t test', () => {
  fc.assert(
    fc.property(values, values, (control, treated) => {
      fc.pre(new Set(control.map((value, i) => value - treated[i]!)).size > 1)
      const rows = control.flatMap((y, i) => [
        { arm: 'none', block: String(i), y },
        { arm: 'malt', block: String(i), y: treated[i]! },
      ])
      const paired = tTest({ kind: 'paired', control, treated, confidence: 0.95 })
      const [difference] = armsInBlocks({ rows, control: 'none', confidence: 0.95 }).differences
      expect(difference!.estimate).toBeCloseTo(paired.difference, 8)
      expect(difference!.low).toBeCloseTo(paired.low, 6)
      expect(difference!.high).toBeCloseTo(paired.high, 6)
    }),
  )
})
test('a block’s own level does not matter, nor the order of rows', () => {
  const rows = [3, 5, 4, 9, 12, 11].map((y, i) => ({
    arm: i % 2 ? 'malt' : 'none',
    block: String(Math.floor(i / 2)),
    y,
  }))
  const before = armsInBlocks({ rows, control: 'none', confidence: 0.95 }).differences[0]!
  const shifted = rows.map((row) => ({ ...row, y: row.y + 100 * Number(row.block) })).reverse()
  const after = armsInBlocks({ rows: shifted, control: 'none', confidence: 0.95 }).differences[0]!
  expect(after.estimate).toBeCloseTo(before.estimate, 9)
  expect(after.se).toBeCloseTo(before.se, 9)
})
test('the spread in % is of a mean above zero, and left out otherwise', () => {
  const rows = [3, 5, 4, 9].map((y, i) => ({ arm: i % 2 ? 'malt' : 'none', y }))
  expect(armsInBlocks({ rows, control: 'none', confidence: 0.95 }).cvPct).toBeGreaterThan(0)
  expect(armsInBlocks({ rows: moved(rows, -100, 1), control: 'none', confidence: 0.95 }).cvPct).toBeNull()
})
test('ten thousand values are worked out, or refused where the blocks are too many', () => {
  const rows = tenThousand(4).map((row, i) => ({ ...row, block: `day ${Math.floor(i / 4) % 20}` }))
  expect(armsInBlocks({ rows, control: 'arm 0', confidence: 0.95 }).residualDf).toBe(10_000 - 4 - 19)
  const many = rows.map((row, i) => ({ ...row, block: String(Math.floor(i / 4)) }))
  expectRefusal(() => armsInBlocks({ rows: many, control: 'arm 0', confidence: 0.95 }), 'out-of-range', 'too-large')
})
test('a control that is not there, blocks on some rows and identical values are refused', () => {
  const rows = [3, 5, 4, 9].map((y, i) => ({ arm: i % 2 ? 'malt' : 'none', y }))
  expectRefusal(() => armsInBlocks({ rows, control: 'nobody', confidence: 0.95 }), 'empty', 'arm-without-rows')
  expectRefusal(
    () => armsInBlocks({ rows: [{ ...rows[0]!, block: 'a' }, ...rows.slice(1)], control: 'none', confidence: 0.95 }),
    'wrong-shape',
    'block-on-some-rows',
  )
  expectRefusal(
    () => armsInBlocks({ rows: moved(rows, 7, 0), control: 'none', confidence: 0.95 }),
    'not-possible',
    'zero-variance',
  )
  expectRefusal(() => armsInBlocks({ rows: [], control: 'none', confidence: 0.95 }), 'empty')
})

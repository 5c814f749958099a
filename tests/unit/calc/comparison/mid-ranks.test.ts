import fc from 'fast-check'
import { expect, test } from 'vitest'
import { midRanks } from '@/lib/calc/comparison/mid-ranks'
import { expectRefusal, reading } from '@/tests/support/arm-rows'

test('tied values share the mean of their places', () => {
  expect(midRanks('values', [7, 3, 7, 1, 7])).toEqual({ ranks: [4, 2, 4, 1, 4], tieSum: 24 })
})
test('ranks always add up to n (n + 1) / 2, and a higher value never has a lower rank', () => {
  fc.assert(
    fc.property(fc.array(reading, { maxLength: 30 }), (values) => {
      const { ranks } = midRanks('values', values)
      expect(ranks.reduce((sum, rank) => sum + rank, 0)).toBe((values.length * (values.length + 1)) / 2)
      values.forEach((a, i) =>
        values.forEach((b, j) => expect(Math.sign(a - b)).toBe(Math.sign(ranks[i]! - ranks[j]!))),
      )
    }),
  )
})
test('what is no number has no rank', () => expectRefusal(() => midRanks('values', [1, NaN]), 'not-finite'))

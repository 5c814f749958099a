import fc from 'fast-check'
import { expect, test } from 'vitest'
import { midRanks } from '@/lib/calc/panel/mid-ranks'

test('equal values share the mean of their ranks', () => {
  expect(midRanks([5, 6, 6])).toEqual({ ranks: [1, 2.5, 2.5], tieSum: 6 })
  expect(midRanks([3, 3, 3, 1])).toEqual({ ranks: [3, 3, 3, 1], tieSum: 24 })
})

test('ranks always add up to n (n + 1) / 2, keep the order, and leave the list alone', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 30 }), (values) => {
      const before = [...values]
      const { ranks } = midRanks(values)
      expect(ranks.reduce((sum, rank) => sum + rank, 0)).toBe((values.length * (values.length + 1)) / 2)
      values.forEach((one, i) => values.forEach((other, j) => expect(Math.sign(ranks[i]! - ranks[j]!)).toBe(Math.sign(one - other))))
      expect(values).toEqual(before)
    }),
  )
})

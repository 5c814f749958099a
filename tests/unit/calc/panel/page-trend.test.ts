import fc from 'fast-check'
import { expect, test } from 'vitest'
import { pageTrend } from '@/lib/calc/panel/page-trend'
import { scoresOf } from '../../../support/panel-scores'

const ranking = fc.shuffledSubarray([1, 2, 3, 4], { minLength: 4, maxLength: 4 })
const order = ['A', 'B', 'C', 'D']

test('the order turned round turns the statistic round about its middle', () => {
  fc.assert(
    fc.property(fc.array(ranking, { minLength: 2, maxLength: 10 }), (rows) => {
      const there = pageTrend({ scores: scoresOf(rows), order })
      const back = pageTrend({ scores: scoresOf(rows), order: order.toReversed() })
      expect(there.statistic - there.expected).toBeCloseTo(back.expected - back.statistic, 9)
      expect(there.pExact! + back.pExact!).toBeGreaterThan(1 - 1e-12)
    }),
  )
})

test('with many tasters the normal approximation comes near the count', () => {
  const rows = Array.from({ length: 60 }, (_, i) =>
    i % 3 === 0 ? [1, 2, 3, 4] : i % 3 === 1 ? [4, 1, 2, 3] : [3, 4, 2, 1],
  )
  const { pExact, pNormal } = pageTrend({ scores: scoresOf(rows), order })
  expect(Math.abs(pExact! - pNormal)).toBeLessThan(0.01)
})

test('ties and too many rankings leave the count out, and say so', () => {
  expect(
    pageTrend({
      scores: scoresOf([
        [1, 2, 2, 4],
        [1, 2, 3, 4],
      ]),
      order,
    }),
  ).toMatchObject({ pExact: null, warnings: ['ties'] })
  const many = Array.from({ length: 3000 }, () => [1, 2, 4, 3])
  expect(pageTrend({ scores: scoresOf(many), order })).toMatchObject({ pExact: null, warnings: ['too-many-to-count'] })
})

test('an order that leaves out, repeats or does not know a sample is refused', () => {
  const scores = scoresOf([
    [1, 2],
    [2, 1],
  ])
  expect(() => pageTrend({ scores, order: ['A'] })).toThrow('wrong-shape')
  expect(() => pageTrend({ scores, order: ['A', 'A'] })).toThrow('duplicate')
  expect(() => pageTrend({ scores, order: ['A', 'X'] })).toThrow('unknown-sample')
})

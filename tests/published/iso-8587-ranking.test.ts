import { describe, expect, test } from 'vitest'
import { friedman } from '@/lib/calc/panel/friedman'
import { leastRankDifference } from '@/lib/calc/panel/least-rank-difference'
import { publishedCheck } from '@/tests/support/published-check'
import { scoresOf } from '@/tests/support/panel-scores'

const ISO = 'ISO 8587, annex A, as reproduced'

/** Rankings made up to give the printed rank sums 17 31 32 23 17: without ties all else follows from the sums. */
const EIGHT = [
  [3, 4, 5, 2, 1],
  [3, 5, 4, 2, 1],
  [1, 5, 3, 4, 2],
  [2, 3, 5, 1, 4],
  [2, 3, 5, 4, 1],
  [1, 4, 3, 5, 2],
  [4, 2, 5, 1, 3],
  [1, 5, 2, 4, 3],
] as const

describe('8 assessors, 5 samples', () => {
  const got = () => friedman({ scores: scoresOf(EIGHT), alpha: 0.05 })
  const check = (what: string, expected: number, value: () => number, absolute: number, why: string) =>
    publishedCheck({
      id: 'P-9.4',
      of: ['panel/friedman'],
      what,
      source: ISO,
      status: 'published inputs',
      expected,
      got: value,
      tolerance: { absolute },
      why,
    })
  check('Friedman', 10.6, () => got().chiSquared, 1e-9, 'exact in decimals')
  check('its p', 0.0314, () => got().p, 5e-5, 'four decimals')
  check('degrees of freedom', 4, () => got().df, 0, 'a count')
  check('least significant difference', 12.396, () => got().leastDifference, 5e-4, 'three decimals')

  test('the rank sums are those printed', () => {
    expect(got().rankSums.map(({ rankSum }) => rankSum)).toEqual([17, 31, 32, 23, 17])
  })

  test('A and E differ from B and C, and nothing else', () => {
    const pairs = got()
      .pairs.filter(({ significant }) => significant)
      .map(({ sample, other }) => sample + other)
    expect(pairs.sort()).toEqual(['AB', 'AC', 'BE', 'CE'])
  })
})

describe('7 assessors, 6 samples, rank sums 7 14 21 28 36 41', () => {
  const rows = Array.from({ length: 7 }, (_, i) => [1, 2, 3, 4, ...(i === 0 ? [6, 5] : [5, 6])])

  publishedCheck({
    id: 'P-9.5',
    of: ['panel/friedman'],
    what: 'Friedman',
    source: 'a student report on ranking, after ISO 8587',
    status: 'published inputs',
    expected: 34.51,
    got: () => friedman({ scores: scoresOf(rows), alpha: 0.05 }).chiSquared,
    tolerance: { absolute: 5e-4 },
    why: 'three decimals',
  })
  publishedCheck({
    id: 'P-9.5',
    of: ['panel/least-rank-difference'],
    what: 'least significant difference: the divisor is 6, where the report divides by 5 and prints 15.06',
    source: 'ISO 8587, against a student report',
    status: 'published, shown wrong',
    expected: 13.72,
    got: () => leastRankDifference({ tasters: 7, samples: 6, alpha: 0.05 }),
    tolerance: { absolute: 0.005 },
    why: 'two decimals',
  })
})

publishedCheck({
  id: 'P-9.6',
  of: ['panel/friedman'],
  what: "ties: F' = F / (1 − E / (J P (P² − 1))), two of three assessors tie a pair",
  source: 'ISO 8587, as reproduced',
  status: 'published inputs',
  // rank sums 3.5, 6, 8.5 of J 3, P 3: F = 12/(3·3·4) · 120.5 − 3·3·4; E = 2 (2³ − 2)
  expected: ((12 / 36) * (3.5 ** 2 + 6 ** 2 + 8.5 ** 2) - 36) / (1 - 12 / (3 * 3 * 8)),
  got: () =>
    friedman({
      scores: scoresOf([
        [1, 2, 3],
        [1, 2.5, 2.5],
        [1.5, 1.5, 3],
      ]),
      alpha: 0.05,
    }).chiSquared,
  tolerance: 1e-9,
  why: 'arithmetic',
})

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { liking } from '@/lib/calc/panel/liking'
import { scoresOf } from '../../../support/panel-scores'

const rows = [
  [6, 7, 5],
  [5, 7, 5],
  [7, 6, 4],
  [4, 6, 5],
  [8, 8, 6],
]

test("a taster's own level is taken out of the comparisons", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -3, max: 1 }), { minLength: 5, maxLength: 5 }), (levels) => {
      const moved = rows.map((row, i) => row.map((score) => score + levels[i]!))
      const asked = { control: 'A', confidence: 0.95 }
      const [plain, other] = [rows, moved].map((each) => liking({ ...asked, scores: scoresOf(each) }).comparisons)
      plain!.forEach(({ estimate, t, pAdjusted, preferSampleShare }, i) => {
        expect(other![i]!.estimate).toBeCloseTo(estimate, 9)
        expect(other![i]!.t).toBeCloseTo(t, 9)
        expect(other![i]!.pAdjusted).toBeCloseTo(pAdjusted, 9)
        expect(other![i]!.preferSampleShare).toBe(preferSampleShare)
      })
    }),
    { examples: [[[-3, -3, -3, -3, 1]]] },
  )
})

test('shares of those who like one, the other or both alike make one', () => {
  for (const { preferSampleShare, preferControlShare, alikeShare } of liking({
    scores: scoresOf(rows),
    control: 'B',
    confidence: 0.95,
  }).comparisons) {
    expect(preferSampleShare + preferControlShare + alikeShare).toBeCloseTo(1, 14)
  }
})

test('an interval leaves out zero just when p is below its level', () => {
  const row = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 3, maxLength: 3 })
  const uneven = (each: number[][]) => new Set(each.map(([a, b]) => a! - b!)).size > 1
  fc.assert(
    fc.property(fc.array(row, { minLength: 3, maxLength: 12 }).filter(uneven), (each) => {
      for (const { low, high, pAdjusted } of liking({ scores: scoresOf(each), control: 'A', confidence: 0.9 })
        .comparisons) {
        if (Math.abs(pAdjusted - 0.1) > 1e-6) expect(low > 0 || high < 0).toBe(pAdjusted < 0.1)
      }
    }),
    { numRuns: 40 },
  )
})

test('a mean that hides two groups is named; a mean of equal scores has no limits', () => {
  const groups = [
    [5, 8],
    [5, 8],
    [6, 3],
    [6, 3],
  ]
  expect(liking({ scores: scoresOf(groups), control: 'A', confidence: 0.95 }).warnings).toEqual([
    { code: 'two-groups', sample: 'B' },
  ])
  const alike = liking({
    scores: scoresOf([
      [5, 7],
      [5, 8],
      [5, 6],
    ]),
    control: 'A',
    confidence: 0.95,
  })
  expect(alike.means[0]).toMatchObject({ mean: 5, sd: 0, low: null, high: null })
  expect(alike.warnings).toEqual([{ code: 'all-scores-alike', sample: 'A' }])
})

test('scores off the scale, an unknown control and differences all alike are refused', () => {
  const asked = { control: 'A', confidence: 0.95 }
  expect(() =>
    liking({
      ...asked,
      scores: scoresOf([
        [0, 5],
        [5, 6],
      ]),
    }),
  ).toThrow('scores[0].score')
  expect(() =>
    liking({
      ...asked,
      scores: scoresOf([
        [5, 10],
        [5, 6],
      ]),
    }),
  ).toThrow('scores[1].score')
  expect(() =>
    liking({
      ...asked,
      scores: scoresOf([
        [5.5, 6],
        [5, 6],
      ]),
    }),
  ).toThrow('not-whole')
  expect(() => liking({ ...asked, control: 'X', scores: scoresOf(rows) })).toThrow('unknown-sample')
  expect(() =>
    liking({
      ...asked,
      scores: scoresOf([
        [5, 6],
        [7, 8],
        [2, 3],
      ]),
    }),
  ).toThrow('zero-variance')
  expect(() => liking({ ...asked, confidence: 95, scores: scoresOf(rows) })).toThrow('confidence')
})

test('ten thousand scores are answered', () => {
  const many = Array.from({ length: 5000 }, (_, i) => [1 + (i % 9), 1 + ((i * 5) % 8)])
  expect(liking({ scores: scoresOf(many), control: 'A', confidence: 0.95 }).df).toBe(4999)
})

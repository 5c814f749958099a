import { expect, test } from 'vitest'
import { checkDose } from '@/lib/calc/dosing/check-dose'
import { liking } from '@/lib/calc/panel/liking'
import { scoresOf } from '@/tests/support/panel-scores'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'Kim et al., Journal of Texture Studies, doi 10.1111/jtxs.12204'

/** 44 tasters give the printed shares: 23 like the roux better, 21 the control; the scores are made up. */
const rows = Array.from({ length: 44 }, (_, i) => (i < 23 ? [5, 7] : [7, 5]))
const got = () => liking({ scores: scoresOf(rows), control: 'A', confidence: 0.95 })

for (const [key, expected] of [
  ['preferSampleShare', 0.523],
  ['preferControlShare', 0.477],
] as const) {
  publishedCheck({
    id: 'P-12.2',
    of: ['panel/liking'],
    what: `water roux against control: ${key}`,
    source,
    status: 'published inputs; number of tasters and scores made up to give them',
    expected,
    got: () => got().comparisons[0]![key],
    tolerance: { absolute: 5e-4 },
    why: 'per cent with one decimal',
  })
}

test('the means hardly differ, and the warning says that they hide two groups', () => {
  expect(Math.abs(got().comparisons[0]!.estimate)).toBeLessThan(0.1)
  expect(got().warnings).toEqual([{ code: 'two-groups', sample: 'B' }])
})

for (const [pct, expected] of [
  [1, 'below-customary'],
  [1.5, 'customary'],
  [6, 'customary'],
  [7, 'above-customary'],
] as const) {
  publishedCheck({
    id: 'P-12.1',
    of: ['dosing/check-dose'],
    what: `water roux of ${pct} % on flour against the doses reported`,
    source,
    status: 'published',
    expected,
    got: () =>
      checkDose({
        sources: [{ lineId: 'roux', substance: 'roux', form: 'roux', massG: 10 * pct, activeShare: 1 }],
        flourMassG: 1000,
        finishedFoodPer100Flour: null,
        flourContentMgPerKg: {},
        conversions: [],
        customary: [{ substance: 'roux', form: 'roux', minMgPerKgFlour: 15_000, maxMgPerKgFlour: 60_000, source }],
        limits: [],
      }).customary[0]?.code,
  })
}

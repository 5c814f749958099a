import { checkDose } from '@/lib/calc/dosing/check-dose'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'Kim et al., Journal of Texture Studies, doi 10.1111/jtxs.12204: water roux of 1.5 to 6.0 % on flour'
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
        customary: [{ substance: 'roux', minMgPerKgFlour: 15_000, maxMgPerKgFlour: 60_000, source }],
        limits: [],
      }).customary[0]?.code,
  })
}

import { equivalentMinutes } from '@/lib/calc/fermentation/equivalent-minutes'
import { q10 } from '@/lib/calc/fermentation/q10'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'US baking trade magazine: yeast activity changes by about 10 % for one °C'

publishedCheck({
  id: 'P-7.3',
  of: ['fermentation/q10'],
  what: '10 % for one °C as a factor for ten',
  source,
  status: 'published rule, worked',
  expected: 2.594,
  got: () => q10({ firstRate: 1, firstTempC: 27, secondRate: 1.1, secondTempC: 28 }),
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})
publishedCheck({
  id: 'P-7.4',
  of: ['fermentation/q10'],
  what: 'growth between 20 and 30 °C as a factor for ten',
  source: 'worked from the growth model of Rosso et al. (1993), P-7.2',
  status: 'published inputs',
  expected: 1.643,
  got: () => q10({ firstRate: 0.59649, firstTempC: 20, secondRate: 0.98016, secondTempC: 30 }),
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})
const hourAt27 = () =>
  equivalentMinutes({
    readings: [
      { atMin: 0, doughTempC: 27 },
      { atMin: 60, doughTempC: 27 },
    ],
    referenceTempC: 30,
  })
for (const [what, expected, got] of [
  ['at most, by growth', 55.4, () => hourAt27().mostMin],
  ['at least, by the 10 % rule', 45.1, () => hourAt27().leastMin],
] as const) {
  publishedCheck({
    id: 'P-7.4',
    of: ['fermentation/equivalent-minutes'],
    what: `60 minutes at 27 °C, as minutes at 30 °C ${what}`,
    source: `${source}; growth by Rosso et al. (1993)`,
    status: 'published inputs',
    expected,
    got,
    tolerance: { absolute: 0.05 },
    why: 'half of the first decimal',
  })
}

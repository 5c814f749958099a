import { specificHeatJPerGK } from '@/lib/calc/temperature/specific-heat'
import { publishedCheck } from '@/tests/support/published-check'
import { USDA_SR28 as F } from './data/usda-sr28'

const source =
  'C. J. Geankoplis, Transport Processes and Separation Process Principles, 4th ed., table A.4-1, heat capacities of foods'

for (const [what, composition, tempC, expected, relative, why] of [
  [
    'water at 20 °C',
    { ...F.ndb14411, waterPct: 100, ashPct: 0 },
    20,
    4.185,
    0.003,
    'the Choi-Okos water curve is smoothed over 0 to 150 °C',
  ],
  ['whole milk, 87.5 % water', F.ndb01077, 20, 3.85, 0.02, 'model against calorimeter, another milk'],
  ['skim milk, 91 % water, table 3.98 to 4.02', F.ndb01151, 20, 4.0, 0.02, 'model against calorimeter, another milk'],
  ['olive oil at 20 °C', F.ndb04053, 20, 2.01, 0.01, 'model against calorimeter'],
  [
    'flour, 12 to 13.5 % water, table 1.80 to 1.88',
    F.ndb20129,
    20,
    1.84,
    0.1,
    'the table gives a range, and Choi-Okos is high for dry starchy powders (8 % here)',
  ],
  ['butter, 15 % water, at 4.4 °C', F.ndb01145, 4.4, 2.3, 0.05, 'the row has 17.9 % water'],
] as const) {
  publishedCheck({
    id: 'cp',
    of: ['temperature/specific-heat'],
    what: `specific heat of ${what}`,
    source,
    status: 'published',
    expected,
    got: () => specificHeatJPerGK({ composition, tempC }),
    tolerance: { relative },
    why,
  })
}

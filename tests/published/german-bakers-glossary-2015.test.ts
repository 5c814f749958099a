import { sourStages } from '@/lib/calc/preferment/sour-stages'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'German bakers’ glossary on the web, entry on three-stage sour, 2015'
const sour = () =>
  sourStages({
    souredFlourG: 450,
    longStandingFactor: 1.5,
    stages: [
      { hoursH: 5, stageHydrationPct: 100 },
      { hoursH: 8, stageHydrationPct: 60 },
      { hoursH: 3, stageHydrationPct: 90 },
    ],
  })

for (const [what, status, expected, got] of [
  ['rye of the middle stage in all, 450 / 3', 'published', 150, () => sour().stages[1]?.flourInAllG],
  ['rye of the first stage, 150 / (8 × 1.5)', 'published', 12.5, () => sour().stages[0]?.flourInAllG],
  ['starter, 12.5 / 5', 'published inputs', 2.5, () => sour().starterG],
  ['rye added at the middle stage', 'published inputs', 137.5, () => sour().stages[1]?.addedFlourG],
  ['rye added at the last stage', 'published inputs', 300, () => sour().stages[2]?.addedFlourG],
  [
    'water in all of the first stage at a dough yield of 200',
    'published inputs',
    12.5,
    () => sour().stages[0]?.waterInAllG,
  ],
  ['water in all of the middle stage at 160', 'published inputs', 90, () => sour().stages[1]?.waterInAllG],
  ['water in all of the last stage at 190', 'published inputs', 405, () => sour().stages[2]?.waterInAllG],
  ['water added at the middle stage', 'published inputs', 77.5, () => sour().stages[1]?.addedWaterG],
  ['water added at the last stage', 'published inputs', 315, () => sour().stages[2]?.addedWaterG],
] as const) {
  publishedCheck({
    id: what.includes('water') ? 'Q-1.2' : 'Q-1.1',
    of: ['preferment/sour-stages'],
    what,
    source,
    status,
    expected,
    got: () => got() ?? Number.NaN,
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic',
  })
}

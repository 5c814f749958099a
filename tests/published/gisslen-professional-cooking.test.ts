import { expect, test } from 'vitest'
import { massesFromPercentages } from '@/lib/calc/formula/masses-from-percentages'
import { massToBuy } from '@/lib/calc/cost/mass-to-buy'
import { yeastEquivalentG } from '@/lib/calc/dosing/yeast-equivalent'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'W. Gisslen, Professional Cooking, procedure for converting a formula to a new yield'
const cake = [
  { id: 'flour', pctFlour: 100, isFlour: true },
  { id: 'everything else', pctFlour: 277.5, isFlour: false },
]
const flourFor = (doughMassG: number) =>
  massesFromPercentages({ lines: cake, target: { by: 'dough-mass', doughMassG } }).flourMassG

publishedCheck({
  id: 'P-1.2',
  of: ['formula/masses-from-percentages'],
  what: 'flour for 3000 g of batter at a total of 377.5 %',
  source,
  status: 'published',
  expected: 794.7,
  got: () => flourFor(3000),
  tolerance: { absolute: 0.05 },
  why: 'printed to 0.1 g',
})
publishedCheck({
  id: 'P-1.2',
  of: ['formula/masses-from-percentages'],
  what: 'the same in ounces: the rule does not know its unit',
  source,
  status: 'published',
  expected: 25.43,
  got: () => flourFor(96),
  tolerance: { absolute: 0.005 },
  why: 'printed to 0.01 oz',
})

test('P-1.2 the source rounds the flour up for scaling; this library leaves rounding to a named step', () => {
  expect(flourFor(3000)).not.toBe(800)
})

for (const [massG, to, expected] of [
  [1.5, 'active-dry', 0.75],
  [40, 'instant', 14],
] as const) {
  publishedCheck({
    id: 'Q-4.1',
    of: ['dosing/yeast-equivalent'],
    what: `${massG} of fresh yeast as ${to}; the rule does not know its unit`,
    source: 'W. Gisslen, Professional Cooking, yeast conversions, as reproduced',
    status: 'published',
    expected,
    got: () => yeastEquivalentG({ massG, from: 'fresh', to, convention: 'gisslen' }),
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic on printed factors',
  })
}
publishedCheck({
  id: 'Q-4.1',
  of: ['dosing/yeast-equivalent'],
  what: 'active dry to instant',
  source: 'W. Gisslen, Professional Cooking, yeast conversions, as reproduced',
  status: 'published inputs',
  expected: 0.7,
  got: () => yeastEquivalentG({ massG: 1, from: 'active-dry', to: 'instant', convention: 'gisslen' }),
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic on printed factors',
})

for (const [what, status, expected, got] of [
  [
    'yield 80 %: 10 lb bought are ready as, lb',
    'published',
    8,
    () => massToBuy({ preparedFromG: 10, preparedToG: 8, neededG: 10 }).readyOfSameG,
  ],
  [
    'yield 80 %: for 10 lb needed, lb to buy',
    'published inputs',
    12.5,
    () => massToBuy({ preparedFromG: 10, preparedToG: 8, neededG: 10 }).toBuyG,
  ],
] as const) {
  publishedCheck({
    id: 'Q-11.2',
    of: ['cost/mass-to-buy'],
    what,
    source: 'W. Gisslen, Professional Cooking, yields, as reproduced',
    status,
    expected,
    got,
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic',
  })
}

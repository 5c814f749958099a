import { expect, test } from 'vitest'
import { massesFromPercentages } from '@/lib/calc/formula/masses-from-percentages'
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

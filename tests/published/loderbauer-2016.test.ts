import { doughYield } from '@/lib/calc/formula/dough-yield'
import { line, straightDough } from '@/tests/support/formula-samples'
import { publishedCheck } from '@/tests/support/published-check'

const withMilk = (milkMassG: number) =>
  straightDough(line('flour', 'flour', 1000), line('milk', 'dairy', milkMassG, null, { isPouredLiquid: true }))

publishedCheck({
  id: 'P-2.3',
  of: ['formula/dough-yield'],
  what: 'net dough yield of 1 kg flour and 550 mL milk, 1 mL taken as 1 g',
  source: 'J. Loderbauer, Das Bäckerbuch, 2016, by way of a German food lexicon',
  status: 'published',
  expected: 155,
  got: () => doughYield(withMilk(550)).netPct,
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
publishedCheck({
  id: 'P-2.3',
  of: ['formula/dough-yield'],
  what: 'the same milk weighed, at 1.03 g/mL',
  source: 'J. Loderbauer, Das Bäckerbuch, 2016, by way of a German food lexicon',
  status: 'published inputs',
  expected: 156.65,
  got: () => doughYield(withMilk(550 * 1.03)).netPct,
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})

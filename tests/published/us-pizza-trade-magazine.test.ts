import { frictionFactor } from '@/lib/calc/temperature/friction-factor'
import { waterTempByFactor } from '@/lib/calc/temperature/water-temp-by-factor'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'P-4.1',
  of: ['temperature/water-temp-by-factor'],
  what: 'water for dough at 80 °F; flour 65, room 75, friction 35',
  source: 'US pizza trade magazine, June 2018',
  status: 'published',
  expected: 65,
  got: () => waterTempByFactor({ wantedTemp: 80, roomTemp: 75, flourTemp: 65, preFermentTemp: null, frictionFactor: 35 }),
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
publishedCheck({
  id: 'P-4.2',
  of: ['temperature/friction-factor'],
  what: 'friction factor from dough at 82 °F; room 75, flour 70, water 65',
  source: 'US pizza trade magazine, spring 2003 (formula)',
  status: 'published inputs',
  expected: 36,
  got: () => frictionFactor({ actualTemp: 82, roomTemp: 75, flourTemp: 70, waterTemp: 65, preFermentTemp: null }),
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})

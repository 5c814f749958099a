import { correctFrictionJPerKg } from '@/lib/calc/temperature/correct-friction'
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
publishedCheck({
  id: 'P-4.2',
  of: ['temperature/correct-friction'],
  what: 'a first dough at 82 °F where 80 was wanted: the factor is 36 and not 30, three times the 2 °F that friction gave more',
  source: 'US pizza trade magazine, spring 2003 (formula)',
  status: 'published inputs',
  expected: 36 - 30,
  got: () => {
    const doughJPerKgK = 2800
    const more = correctFrictionJPerKg({
      usedFrictionJPerKg: 0,
      heatCapacityJPerK: 10 * doughJPerKgK,
      doughMassG: 10_000,
      wantedDoughTempC: ((80 - 32) * 5) / 9,
      actualDoughTempC: ((82 - 32) * 5) / 9,
    })
    return ((3 * more) / doughJPerKgK) * (9 / 5)
  },
  tolerance: { relative: 1e-9 },
  why: 'exact arithmetic',
})

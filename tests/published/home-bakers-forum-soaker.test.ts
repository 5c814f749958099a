import { soaker } from '@/lib/calc/preferment/soaker'
import { publishedCheck } from '@/tests/support/published-check'

const dough = () => soaker({ flourMassG: 500, waterMassG: 350, soakedMassG: 100, soakPct: 100, pouredOffG: 0 })
for (const [what, expected, got] of [
  ['dough water on flour', 70, () => dough().doughWaterOnFlourPct],
  ['all water on flour', 90, () => dough().allWaterOnFlourPct],
  ['all water on flour and grain', 75, () => dough().allWaterOnFlourAndSoakedPct],
] as const) {
  publishedCheck({
    id: 'Q-1.10',
    of: ['preferment/soaker'],
    what: `flour 500, water 350, soaker of 100 grain and 100 water: ${what}, %`,
    source: 'Question on a home bakers’ forum',
    status: 'published inputs',
    expected,
    got,
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic',
  })
}

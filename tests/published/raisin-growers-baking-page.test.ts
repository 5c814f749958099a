import { soaker } from '@/lib/calc/preferment/soaker'
import { publishedCheck } from '@/tests/support/published-check'

for (const [soakPct, expected] of [
  [12, 3.6],
  [15, 4.5],
] as const) {
  publishedCheck({
    id: 'Q-1.9',
    of: ['preferment/soaker'],
    what: `water for 30 lb of raisins at ${soakPct} %, lb`,
    source: 'California raisin growers’ baking page',
    status: 'published',
    expected,
    got: () => soaker({ flourMassG: 100, waterMassG: 60, soakedMassG: 30, soakPct, pouredOffG: 0 }).soakWaterG,
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic',
  })
}

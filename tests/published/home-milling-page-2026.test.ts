import { doughForTin } from '@/lib/calc/tin/dough-for-tin'
import { publishedCheck } from '@/tests/support/published-check'

for (const [pct, expected] of [
  [55, 781],
  [60, 852],
  [65, 923],
] as const) {
  publishedCheck({
    id: 'Q-2.3',
    of: ['tin/dough-for-tin'],
    what: `all wholegrain, tin of 1420 mL at ${pct} % of its water, g`,
    source: 'Home-milling page, 2026',
    status: 'published; common practice',
    expected,
    got: () => doughForTin({ tinVolumeMl: 1420, tinMlPerG: 100 / pct }).doughMassG,
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic',
  })
}

import { doughForTin } from '@/lib/calc/tin/dough-for-tin'
import { publishedCheck } from '@/tests/support/published-check'

for (const [tinVolumeMl, tinMlPerG, kind, printed, expected] of [
  [1500, 1.78, 'white', ' (printed 842)', 842.7],
  [1500, 1.71, 'half wholemeal', '', 877.19],
  [1500, 1.66, 'wholemeal', '', 903.61],
  [1800, 1.78, 'white', ' (printed 1011)', 1011.24],
] as const) {
  publishedCheck({
    id: 'Q-2.1',
    of: ['tin/dough-for-tin'],
    what: `tin of ${tinVolumeMl} mL by ${tinMlPerG}, ${kind}${printed}`,
    source: 'Australian bread-baking page, 2024',
    status: 'published; common practice',
    expected,
    got: () => doughForTin({ tinVolumeMl, tinMlPerG }).doughMassG,
    tolerance: { absolute: 0.005 },
    why: 'half of the second decimal worked out; the page cuts to whole grams',
  })
}

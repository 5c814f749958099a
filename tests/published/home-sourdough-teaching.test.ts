import { risePct } from '@/lib/calc/fermentation/rise-pct'
import { publishedCheck } from '@/tests/support/published-check'

for (const [heightMm, expected, temp] of [
  [78, 30, '80 °F'],
  [105, 75, '70 °F'],
  [120, 100, '65 °F'],
] as const) {
  publishedCheck({
    id: 'P-7.7',
    of: ['fermentation/rise-pct'],
    what: `60 mm in a straight jar that stand at ${heightMm} mm: the end of bulk taught for ${temp}`,
    source: 'home sourdough teaching: rise in % of the start, straight-sided jar at dough temperature',
    status: 'common practice, no source',
    expected,
    got: () => risePct({ startHeightMm: 60, heightMm }),
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic',
  })
}

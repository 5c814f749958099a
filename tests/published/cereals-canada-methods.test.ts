import { MOISTURE_BASES_PCT, atMoistureBasisPct } from '@/lib/calc/formula/at-moisture-basis'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'Cereals Canada, methods page: flour is reported at 14 % moisture, wheat at 13.5 %'
for (const [what, basisPct, expected] of [
  ['flour', MOISTURE_BASES_PCT['us-flour'], (12 * 86) / 90],
  ['wheat', MOISTURE_BASES_PCT['canadian-wheat'], (12 * 86.5) / 90],
] as const) {
  publishedCheck({
    id: 'P-3.2',
    of: ['formula/at-moisture-basis'],
    what: `12 % protein at 10 % moisture, reported for ${what}`,
    source,
    status: 'published inputs',
    expected,
    got: () => atMoistureBasisPct({ valuePct: 12, moisturePct: 10, basisPct }),
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic on the printed basis',
  })
}

import { atMoistureBasisPct } from '@/lib/calc/formula/at-moisture-basis'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'P-3.1',
  of: ['formula/at-moisture-basis'],
  what: 'value at basis B = as-is x (100 - B) / (100 - M), here 12.0 at 12 % restated at 14 %',
  source: 'Flour guide of a US milling company, 2006',
  status: 'published',
  expected: (12 * 86) / 88,
  got: () => atMoistureBasisPct({ valuePct: 12, moisturePct: 12, basisPct: 14 }),
  tolerance: { relative: 1e-12 },
  why: 'the formula itself is what is published',
})

import { formulaTotals } from '@/lib/calc/formula/formula-totals'
import { line, straightDough } from '@/tests/support/formula-samples'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'P-1.7',
  of: ['formula/formula-totals'],
  what: 'all flours together are 100 %',
  source: 'Healea, wholegrain teaching page, rule for several flours',
  status: 'published',
  expected: 100,
  got: () =>
    formulaTotals(
      straightDough(
        line('white', 'flour', 640),
        line('wholemeal', 'flour', 235),
        line('rye', 'flour', 125),
        line('water', 'water', 700),
      ),
    )
      .lines.slice(0, 3)
      .reduce((sum, l) => sum + l.pctFlour, 0),
  tolerance: { relative: 1e-12 },
  why: 'a definition; binary rounding only',
})

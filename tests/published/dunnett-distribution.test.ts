import { describe } from 'vitest'
import { dunnettAt, dunnettEntryOf, type DunnettPoint } from '@/tests/support/dunnett-points'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/dunnett-distribution.json'

// Computed by two quadratures of ours in SciPy and mpmath; what Dunnett printed is in dunnett-tables-1955.test.ts.
describe.each(cases)('$title', (c) => {
  c.inputs.points.forEach((point: DunnettPoint, i) => {
    publishedCheck({
      of: [dunnettEntryOf(point)],
      what: JSON.stringify(point),
      source: c.computedWith,
      status: `second route: ${c.checkedWith}`,
      expected: c.expected.values[i] ?? NaN,
      got: () => dunnettAt(point),
      tolerance: 1e-9,
      why: 'stated accuracy of the function; the two routes agree to 1e-13',
    })
  })
})

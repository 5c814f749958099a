import { describe } from 'vitest'
import { studentizedRangeQuantile } from '@/lib/calc/distributions/studentized-range-quantile'
import { studentizedRangeTail } from '@/lib/calc/distributions/studentized-range-tail'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/studentized-range.json'

type Point = { k: number; df: number; q?: number; p?: number; tail?: string }

function value({ k, df, q, p, tail }: Point): number {
  if (p !== undefined) return studentizedRangeQuantile({ p: 1 - p, groups: k, df })
  return studentizedRangeTail({ range: q ?? NaN, groups: k, df })[tail === 'lower' ? 'lower' : 'upper']
}

describe.each(cases)('$title', (c) => {
  c.inputs.points.forEach((point: Point, i) =>
    publishedCheck({
      of: [point.p === undefined ? 'distributions/studentized-range-tail' : 'distributions/studentized-range-quantile'],
      what: JSON.stringify(point),
      source: c.source,
      status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
      expected: c.expected.values[i] ?? NaN,
      got: () => value(point),
      tolerance: 1e-9,
      why: 'stated accuracy; the two routes agree to 1e-12',
    }),
  )
})

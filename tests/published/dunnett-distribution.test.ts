import { describe } from 'vitest'
import { dunnettLoadings } from '@/lib/calc/distributions/dunnett-loadings'
import { dunnettQuantile } from '@/lib/calc/distributions/dunnett-quantile'
import { dunnettTail } from '@/lib/calc/distributions/dunnett-tail'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/dunnett-distribution.json'

type Point = { n_control: number; n_treatments: number[]; df: number; alternative: string; confidence?: number; c?: number; tail?: string }

function value(point: Point): number {
  const q = {
    df: point.df,
    loadings: dunnettLoadings({ controlCount: point.n_control, armCounts: point.n_treatments }),
    sides: point.alternative === 'two-sided' ? ('two' as const) : ('one' as const),
  }
  if (point.confidence !== undefined) return dunnettQuantile({ ...q, p: 1 - point.confidence })
  return dunnettTail({ ...q, c: point.c ?? NaN })[point.tail === 'lower' ? 'lower' : 'upper']
}

describe.each(cases)('$title', (c) => {
  c.inputs.points.forEach((point: Point, i) => {
    publishedCheck({
      what: JSON.stringify(point),
      source: c.source,
      status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
      expected: c.expected.values[i] ?? NaN,
      got: () => value(point),
      tolerance: 1e-9,
      why: 'stated accuracy of the function; the two routes agree to 1e-13',
    })
    const printed = c.printed?.values_2dp[i]
    if (printed !== undefined) {
      publishedCheck({
        what: `printed entry for ${JSON.stringify(point)}`,
        source: c.printed?.source ?? '',
        status: 'from memory',
        expected: printed,
        got: () => value(point),
        tolerance: 0.0055 / printed,
        why: 'printed with two decimals',
      })
    }
  })
})

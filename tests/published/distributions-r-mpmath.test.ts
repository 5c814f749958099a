import { describe } from 'vitest'
import type { CalcId } from '@/lib/calc/catalogue'
import { binomialTail } from '@/lib/calc/distributions/binomial-tail'
import { chiSquaredQuantile } from '@/lib/calc/distributions/chi-squared-quantile'
import { chiSquaredTail } from '@/lib/calc/distributions/chi-squared-tail'
import { fQuantile } from '@/lib/calc/distributions/f-quantile'
import { fTail } from '@/lib/calc/distributions/f-tail'
import { normalQuantile } from '@/lib/calc/distributions/normal-quantile'
import { type Tail, normalTail } from '@/lib/calc/distributions/normal-tail'
import { tQuantile } from '@/lib/calc/distributions/t-quantile'
import { tTail } from '@/lib/calc/distributions/t-tail'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/distributions-r-mpmath.json'

type Point = { tail: string; x?: number; p?: number; df?: number; df1?: number; df2?: number }

const entries: Record<string, CalcId> = {
  'norm-cdf': 'distributions/normal-tail',
  'norm-q': 'distributions/normal-quantile',
  t: 'distributions/t-tail',
  't-q': 'distributions/t-quantile',
  chi2: 'distributions/chi-squared-tail',
  'chi2-q': 'distributions/chi-squared-quantile',
  f: 'distributions/f-tail',
  'f-q': 'distributions/f-quantile',
  binom: 'distributions/binomial-tail',
}
const functions: Record<
  string,
  (q: { x: number; p: number; df: number; df1: number; df2: number; tail: Tail }) => number
> = {
  'norm-cdf': ({ x, tail }) => normalTail({ z: x, tail }),
  'norm-q': normalQuantile,
  t: ({ x, df, tail }) => tTail({ t: x, df, tail }),
  't-q': tQuantile,
  chi2: chiSquaredTail,
  'chi2-q': chiSquaredQuantile,
  f: ({ x, df1, df2, tail }) => fTail({ f: x, df1, df2, tail }),
  'f-q': fQuantile,
  binom: ({ x, df, p, tail }) => binomialTail({ k: x, n: df, share: p, tail }),
}

describe.each(cases)('$title', (c) => {
  c.inputs.points.forEach((point: Point, i) => {
    publishedCheck({
      of: [entries[c.id]!],
      what: `${c.id} at ${JSON.stringify(point)}`,
      source: c.computedWith,
      status: `second route: ${c.checkedWith}`,
      expected: c.expected.values[i] ?? NaN,
      got: () =>
        functions[c.id]!({
          x: NaN,
          p: NaN,
          df: NaN,
          df1: NaN,
          df2: NaN,
          ...point,
          tail: point.tail === 'lower' ? 'lower' : 'upper',
        }),
      tolerance: c.tolerance.rel,
      why: 'stated accuracy of the function; the two routes agree to 1e-14',
    })
  })
})

import { describe } from 'vitest'
import { noncentralFTail } from '@/lib/calc/distributions/noncentral-f-tail'
import { noncentralTTail } from '@/lib/calc/distributions/noncentral-t-tail'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/noncentral-r-mpmath.json'

type Point = { tail: string; x: number; ncp: number; df?: number; df1?: number; df2?: number }

const functions = {
  nct: (p: Point) => noncentralTTail({ t: p.x, df: p.df!, noncentrality: p.ncp, tail: sideOf(p) }),
  ncf: (p: Point) => noncentralFTail({ f: p.x, df1: p.df1!, df2: p.df2!, noncentrality: p.ncp, tail: sideOf(p) }),
}
const sideOf = ({ tail }: Point) => (tail === 'lower' ? 'lower' : 'upper')

describe.each(cases)('$title', (c) => {
  const id = c.id === 'nct' ? 'nct' : 'ncf'
  c.inputs.points.forEach((point: Point, i) => {
    publishedCheck({
      of: [id === 'nct' ? 'distributions/noncentral-t-tail' : 'distributions/noncentral-f-tail'],
      what: `${id} at ${JSON.stringify(point)}`,
      source: c.computedWith,
      status: `second route: ${c.checkedWith}`,
      expected: c.expected.values[i] ?? NaN,
      got: () => functions[id](point),
      tolerance: 1e-10,
      why: 'stated accuracy; the two routes agree to 3e-14',
    })
  })
})

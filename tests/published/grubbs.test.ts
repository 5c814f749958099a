import { describe, expect, test } from 'vitest'
import { grubbsCritical, grubbsTest } from '@/lib/calc/analysis/grubbs-test'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/grubbs.json'

const [table, nist] = [cases[0]!, cases[1]!]

describe(table.title, () => {
  table.inputs.points!.forEach((point, i) => {
    publishedCheck({
      of: ['analysis/grubbs-test'],
      what: `n ${point.n}, level ${point.alpha}, ${point.sided}-sided`,
      source: table.source,
      status: `computed with ${table.computedWith}; second route: ${table.checkedWith}`,
      expected: table.expected.values![i]!,
      // one side at level α is two sides at 2α
      got: () => grubbsCritical({ count: point.n, alpha: point.sided === 'two' ? point.alpha : 2 * point.alpha }),
      tolerance: table.tolerance.rel,
      why: 'closed form in the t quantile',
    })
  })
})

describe(nist.title, () => {
  const got = () => grubbsTest({ values: nist.inputs.values!, alpha: nist.inputs.alpha! })
  const check = (what: string, expected: number, value: () => number, tolerance: number, why: string) =>
    publishedCheck({
      of: ['analysis/grubbs-test'],
      what,
      source: nist.source,
      status: `computed with ${nist.computedWith}`,
      expected,
      got: value,
      tolerance,
      why,
    })
  check('G', nist.expected.G!, () => got().g, 1e-8, 'double precision')
  check('critical value', nist.expected.critical!, () => got().critical, 1e-8, 'double precision')
  check('p', nist.expected.p!, () => got().p, 1e-6, 'G is close to its largest possible value, where p is steep')
  publishedCheck({
    of: ['analysis/grubbs-test'],
    what: 'G as printed',
    source: nist.source,
    status: 'from memory',
    expected: 2.469,
    got: () => got().g,
    tolerance: { absolute: 0.0005 },
    why: 'printed with three decimals',
  })

  test('the eighth value is the outlier', () => {
    expect(got()).toMatchObject({ index: 7, value: 245.57, outlier: true })
  })
})

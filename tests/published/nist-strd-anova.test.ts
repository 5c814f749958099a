import { describe } from 'vitest'
import { fitAdditive } from '@/lib/calc/analysis/fit-additive'
import { checkOneWayAnova } from '@/tests/support/one-way-figures'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/nist-strd-anova.json'

describe.each(cases)('$title', (c) => {
  const fit = () => {
    const rows = c.inputs.groups.flatMap((group) => group.values.map((y) => ({ arm: group.name, y })))
    return fitAdditive({ rows, arms: c.inputs.groups.map((group) => group.name), confidence: 0.95 })
  }
  const expected = c.expected
  const figures: [string, number, () => number, number][] = [
    ['df between', expected.df_between, () => fit().anova[0]!.df, 0],
    ['df within', expected.df_within, () => fit().residualDf, 0],
    ['sum of squares between', expected.ss_between, () => fit().anova[0]!.sumSquares, c.tolerance.rel],
    ['sum of squares within', expected.ss_within, () => fit().anova[1]!.sumSquares, c.tolerance.rel],
    ['F', expected.F, () => fit().anova[0]!.f!, c.tolerance.rel],
    ['p', expected.p, () => fit().anova[0]!.p!, c.tolerance.fields.p],
    ['residual SD', expected.residual_sd, () => fit().residualSd, c.tolerance.rel],
  ]
  for (const [what, value, got, tolerance] of figures) {
    publishedCheck({
      of: ['analysis/fit-additive'],
      what,
      source: c.source,
      status: what === 'p' ? 'computed with mpmath from the certified data' : 'certified value',
      expected: value,
      got,
      tolerance,
      why: c.tolerance.note,
    })
  }
})

for (const c of cases) checkOneWayAnova(c, c.tolerance.note)

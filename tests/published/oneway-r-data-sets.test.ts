import { describe } from 'vitest'
import { fitAdditive } from '@/lib/calc/analysis/fit-additive'
import { oneWayAnova } from '@/lib/calc/comparison/one-way-anova'
import { checkCase, type Figure } from '@/tests/support/published-case'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/oneway-r-data-sets.json'

describe.each(cases)('$title', (c) => {
  const arms = c.inputs.groups.map((group) => group.name)
  const fit = () =>
    fitAdditive({ rows: c.inputs.groups.flatMap((group) => group.values.map((y) => ({ arm: group.name, y }))), arms, confidence: 0.95 })
  const figures: [string, number, () => number][] = [
    ['sum of squares between', c.expected.ss_between, () => fit().anova[0]!.sumSquares],
    ['sum of squares within', c.expected.ss_within, () => fit().anova[1]!.sumSquares],
    ['F', c.expected.F, () => fit().anova[0]!.f!],
    ['p', c.expected.p, () => fit().anova[0]!.p!],
    ['residual SD', c.expected.residual_sd, () => fit().residualSd],
    ...c.expected.means.map((mean, i): [string, number, () => number] => [`mean of ${arms[i]}`, mean, () => fit().armMeans[i]!.estimate]),
  ]
  for (const [what, expected, got] of figures) {
    publishedCheck({
      what,
      source: c.source,
      status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
      expected,
      got,
      tolerance: what === 'p' ? c.tolerance.fields.p : c.tolerance.rel,
      why: 'double precision with room for another order of summing',
    })
  }
})

for (const c of cases) {
  const rows = c.inputs.groups.flatMap((group) => group.values.map((y) => ({ arm: group.name, y })))
  const got = () => oneWayAnova({ rows, confidence: 0.95 })
  const e = c.expected
  checkCase(c, ['comparison/one-way-anova'], 'double precision with room for another order of summing', [
    ['df between', e.df_between, () => got().df1],
    ['df within', e.df_within, () => got().df2],
    ['sum of squares between', e.ss_between, () => got().sumSquaresBetween],
    ['sum of squares within', e.ss_within, () => got().sumSquaresWithin],
    ['mean square between', e.ms_between, () => got().meanSquareBetween],
    ['mean square within', e.ms_within, () => got().meanSquareWithin],
    ['F', e.F, () => got().f],
    ['p', e.p, () => got().p, c.tolerance.fields.p],
    ['share explained', e.r_squared, () => got().explainedShare],
    ['residual SD', e.residual_sd, () => got().residualSd],
    ['mean of all', e.grand_mean, () => got().grandMean],
    ...e.means.map((mean, i): Figure => [`mean of ${c.inputs.groups[i]!.name}`, mean, () => got().arms[i]!.mean]),
  ])
}

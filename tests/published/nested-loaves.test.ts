import { describe } from 'vitest'
import { analyseBatches } from '@/lib/calc/analysis/analyse-batches'
import { fitMixedModel } from '@/lib/calc/mixed-model/fit-mixed-model'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/nested-loaves.json'

// The fit of batches as random tests them against loaves by the same table.
describe.each(cases)('$title, batches random', (c) => {
  const rows = c.inputs.rows.map(({ arm, batch, y }) => ({ arm, factors: { batch }, y }))
  const tested = () =>
    fitMixedModel({ rows, model: { arms: c.inputs.arms, random: ['batch'] } }).varianceComponents[0]!.test!
  const figures: [string, number, () => number, number][] = [
    ['df of batches', c.expected.df_batch, () => tested().df1, 0],
    ['df of loaves', c.expected.df_loaf, () => tested().df2, 0],
    ['F of batches against loaves', c.expected.F_batch, () => tested().f, c.tolerance.rel],
    ['p of batches against loaves', c.expected.p_batch, () => tested().p, c.tolerance.fields.p_batch],
  ]
  for (const [what, expected, got, tolerance] of figures) {
    publishedCheck({
      of: ['mixed-model/fit-mixed-model'],
      what,
      source: c.source,
      status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
      expected,
      got,
      tolerance,
      why: 'double precision, differences of numbers near 2500',
    })
  }
})

// With equal loaves the analysis of batch means is the nested analysis of variance: arm tested against batch.
describe.each(cases)('$title', (c) => {
  const loaves = 2
  const analysis = () =>
    analyseBatches({
      readings: c.inputs.rows.map((row, i) => ({ arm: row.arm, batch: row.batch, loaf: String(i), value: row.y })),
      arms: c.inputs.arms,
      confidence: 0.95,
      alternative: 'two-sided',
      scale: 'plain',
    })
  const e = c.expected
  const figures: [string, number, () => number][] = [
    ['df of batches', e.df_batch, () => analysis().fit.residualDf],
    ['sum of squares of arm', e.ss_arm, () => loaves * analysis().fit.anova[0]!.sumSquares],
    ['sum of squares of batch', e.ss_batch, () => loaves * analysis().fit.anova[1]!.sumSquares],
    ['F of arm', e.F_arm, () => analysis().fit.anova[0]!.f!],
    ['p of arm', e.p_arm, () => analysis().fit.anova[0]!.p!],
    ['variance of loaves in a batch', e.var_loaf, () => analysis().loafVariation!.sd ** 2],
    ['df of loaves', e.df_loaf, () => analysis().loafVariation!.df],
    ['standard error of a difference', e.se_difference, () => analysis().fit.differences[0]!.se],
    ...e.means.map((mean, i): [string, number, () => number] => [
      `mean of ${c.inputs.arms[i]}`,
      mean,
      () => analysis().fit.armMeans[i]!.estimate,
    ]),
  ]
  for (const [what, expected, got] of figures) {
    publishedCheck({
      of: ['analysis/analyse-batches', 'analysis/batch-means'],
      what,
      source: c.source,
      status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
      expected,
      got,
      tolerance: c.tolerance.rel,
      why: 'double precision, differences of numbers near 2500',
    })
  }
})

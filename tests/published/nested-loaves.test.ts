import { describe } from 'vitest'
import { analyseBatches } from '@/lib/calc/analysis/analyse-batches'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/nested-loaves.json'

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
    ...e.means.map((mean, i): [string, number, () => number] => [`mean of ${c.inputs.arms[i]}`, mean, () => analysis().fit.armMeans[i]!.estimate]),
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

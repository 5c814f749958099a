import { describe } from 'vitest'
import { ownVariation } from '@/lib/calc/analysis/own-variation'
import { repeatability } from '@/lib/calc/comparison/repeatability'
import { checkCase } from '@/tests/support/published-case'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/repeatability-dyestuff.json'

// Davies & Goldsmith (1972), Statistical Methods in Research and Production: six batches, five preparations each.
describe.each(cases)('$title', (c) => {
  const got = () =>
    ownVariation({
      readings: c.inputs.groups.flatMap((g) =>
        g.values.map((value, i) => ({ arm: 'one', batch: g.name, loaf: String(i), value })),
      ),
      confidence: 0.95,
    })
  const figures: [string, number, () => number][] = [
    ['mean', c.expected.grand_mean, () => got().mean],
    ['SD within a batch', c.expected.s_r, () => got().loaf.sd],
    ['its lower limit', c.expected.s_r_ci95_lower, () => got().loaf.low],
    ['its upper limit', c.expected.s_r_ci95_upper, () => got().loaf.high],
    ['its df', c.expected.df_within, () => got().loaf.df],
    ['SD between batches', c.expected.s_between, () => got().batch.sd],
  ]
  for (const [what, expected, value] of figures) {
    publishedCheck({
      of: ['analysis/own-variation'],
      what,
      source: c.source,
      status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
      expected,
      got: value,
      tolerance: c.tolerance.rel,
      why: 'double precision',
    })
  }
})

for (const c of cases) {
  const got = () =>
    repeatability({
      rows: c.inputs.groups.flatMap((g) => g.values.map((y) => ({ batch: g.name, y }))),
      confidence: 0.95,
    })
  const e = c.expected
  checkCase(c, ['comparison/repeatability'], 'double precision', [
    ['mean', e.grand_mean, () => got().grandMean],
    ['df within', e.df_within, () => got().df],
    ['values in a batch', e.n0, () => got().effectiveBatchSize],
    ['repeatability SD', e.s_r, () => got().repeatabilitySd],
    ['SD between batches', e.s_between, () => got().betweenSd],
    ['intermediate SD', e.s_intermediate, () => got().intermediateSd],
    ['repeatability, % of the mean', e.cv_r_percent, () => got().repeatabilityCvPct!],
    ['intermediate, % of the mean', e.cv_intermediate_percent, () => got().intermediateCvPct!],
    ['pooled, % of each mean', e.cv_pooled_percent, () => got().pooledCvPct!],
    ['repeatability limit', e.repeatability_limit, () => got().repeatabilityLimit],
    ['low', e.s_r_ci95_lower, () => got().low],
    ['high', e.s_r_ci95_upper, () => got().high],
    ['share between batches', e.icc, () => got().betweenShare],
  ])
}

import { describe } from 'vitest'
import { ownVariation } from '@/lib/calc/analysis/own-variation'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/repeatability-dyestuff.json'

// Davies & Goldsmith (1972), Statistical Methods in Research and Production: six batches, five preparations each.
describe.each(cases)('$title', (c) => {
  const got = () =>
    ownVariation({
      readings: c.inputs.groups.flatMap((g) => g.values.map((value, i) => ({ arm: 'one', batch: g.name, loaf: String(i), value }))),
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

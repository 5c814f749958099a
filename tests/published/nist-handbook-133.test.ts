import { usAllowableVariationG } from '@/lib/calc/net-weight/us-allowable-variation'
import { publishedCheck } from '@/tests/support/published-check'

const G_PER_LB = 453.59237

for (const [labelledG, expected] of [
  [340, 16.3],
  [400, 18.1],
  [454, 19.9],
  [500, 21.7],
  [600, 23.5],
  [680, 25.4],
  [750, 27.2],
  [800, 29],
  [907, 31.7],
  [113, 7.2],
  [250, 12.7],
  [300, 14.5],
  [1000, 35.3],
  [1500, 49],
] as const) {
  publishedCheck({
    id: 'P-10.5',
    of: ['net-weight/us-allowable-variation'],
    what: `${labelledG} g on the label: maximum allowable variation, g`,
    source: 'NIST Handbook 133, table 2-5',
    status: labelledG === 113 || labelledG === 907 ? 'published in chapter 2, 2026' : 'from memory',
    expected,
    got: () => usAllowableVariationG({ labelledG }).variationG,
    tolerance: { relative: 1e-12 },
    why: 'the table itself',
  })
}
publishedCheck({
  id: 'P-10.5',
  of: ['net-weight/us-allowable-variation'],
  what: 'one pound: 0.044 lb',
  source: 'NIST Handbook 133, table 2-5, in pounds',
  status: 'from memory',
  expected: 0.044 * G_PER_LB,
  got: () => usAllowableVariationG({ labelledG: G_PER_LB }).variationG,
  tolerance: { absolute: 0.1 },
  why: 'the table in grams is rounded to a tenth, the one in pounds to 0.002 lb',
})

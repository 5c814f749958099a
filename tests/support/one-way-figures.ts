import { describe } from 'vitest'
import { fitAdditive } from '@/lib/calc/analysis/fit-additive'
import type cases from '@/tests/published/data/oneway-r-data-sets.json'
import { publishedCheck } from './published-check'

/** Checks a one-way analysis of variance figure by figure. */
export function checkOneWay(c: (typeof cases)[number]): void {
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
  describe(c.title, () => {
    for (const [what, expected, got] of figures) {
      publishedCheck({
        of: ['analysis/fit-additive'],
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
}

import { describe } from 'vitest'
import { fitAdditive } from '@/lib/calc/analysis/fit-additive'
import type cases from '@/tests/published/data/blocks-additive.json'
import { publishedCheck } from './published-check'

/** Checks an analysis of variance of arm and block figure by figure. */
export function checkAdditive(c: (typeof cases)[number]): void {
  const fit = () =>
    fitAdditive({
      rows: c.inputs.rows.flatMap((row) => (row.y === null ? [] : [{ arm: row.arm, block: row.block, y: row.y }])),
      arms: c.inputs.arms,
      confidence: 0.95,
    })
  const e = c.expected
  const figures: [string, number, () => number][] = [
    ['residual df', e.df_error, () => fit().residualDf],
    ['block before arm, sum of squares', e.ss_block_unadjusted, () => fit().anova[0]!.sumSquares],
    ['arm after block, sum of squares', e.ss_arm_adjusted, () => fit().anova[1]!.sumSquares],
    ['block after arm, sum of squares', e.ss_block_adjusted, () => fit().blockAfterArm!.sumSquares],
    ['residual sum of squares', e.ss_error, () => fit().anova[2]!.sumSquares],
    ['F of arm', e.F_arm, () => fit().anova[1]!.f!],
    ['p of arm', e.p_arm, () => fit().anova[1]!.p!],
    ['p of block', e.p_block, () => fit().blockAfterArm!.p!],
    ...e.lsmeans.flatMap((row, i): [string, number, () => number][] => [
      [`least-squares mean of ${row.arm}`, row.estimate, () => fit().armMeans[i]!.estimate],
      [`its standard error, ${row.arm}`, row.se, () => fit().armMeans[i]!.se],
    ]),
    ...e.contrasts.flatMap((row, i): [string, number, () => number][] => [
      [`${row.arm} minus control`, row.estimate, () => fit().differences[i]!.estimate],
      [`its standard error, ${row.arm}`, row.se, () => fit().differences[i]!.se],
      [`its unadjusted p, ${row.arm}`, row.p, () => fit().differences[i]!.p],
    ]),
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
        tolerance: c.tolerance.rel,
        why: 'double precision, differences of numbers near 2500',
      })
    }
  })
}

import { describe } from 'vitest'
import { fitAdditive } from '@/lib/calc/analysis/fit-additive'
import { armsInBlocks } from '@/lib/calc/comparison/arms-in-blocks'
import { checkCase, type Figure } from '@/tests/support/published-case'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/blocks-additive.json'

describe.each(cases)('$title', (c) => {
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
  for (const [what, expected, got] of figures) {
    publishedCheck({
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

for (const c of cases) {
  const rows = c.inputs.rows.flatMap(({ arm, block, y }) => (y === null ? [] : [{ arm, block, y }]))
  const got = () => armsInBlocks({ rows, control: c.inputs.arms[0]!, confidence: 0.95 })
  const e = c.expected
  checkCase(c, ['comparison/arms-in-blocks'], 'double precision, differences of numbers near 2500', [
    ['number of values', e.n, () => got().count],
    ['df of block', e.df_block, () => got().anova[0]!.df],
    ['df of arm', e.df_arm, () => got().anova[1]!.df],
    ['residual mean square', e.ms_error, () => got().residualSd ** 2],
    ['F of block after arm', e.F_block, () => got().anova[3]!.f!],
    ['coefficient of variation, %', e.cv_percent, () => got().cvPct!],
    ...e.contrasts.flatMap((contrast, i): Figure[] => [
      [`t of ${contrast.arm}`, contrast.t, () => got().differences[i]!.t],
      [`df of ${contrast.arm}`, contrast.df, () => got().differences[i]!.df],
    ]),
  ])
}

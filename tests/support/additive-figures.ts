import { armDayEntries } from '@/lib/calc/analysis/arm-day-entries'
import { fitAdditive } from '@/lib/calc/analysis/fit-additive'
import { armsInBlocks } from '@/lib/calc/comparison/arms-in-blocks'
import type cases from '@/tests/published/data/blocks-additive.json'
import { checkCase, type Figure } from './published-case'

/** Checks an analysis of variance of arm and block figure by figure. */
export function checkAdditive(c: (typeof cases)[number]): void {
  const fit = () =>
    fitAdditive({
      rows: c.inputs.rows.flatMap((row) => (row.y === null ? [] : [{ arm: row.arm, block: row.block, y: row.y }])),
      arms: c.inputs.arms,
      confidence: 0.95,
    })
  const e = c.expected
  const figures: Figure[] = [
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
  checkCase(c, ['analysis/fit-additive'], 'double precision, differences of numbers near 2500', figures)

  const rows = c.inputs.rows.flatMap(({ arm, block, y }) => (y === null ? [] : [{ arm, block, y }]))
  const got = () => armsInBlocks({ rows, control: c.inputs.arms[0]!, confidence: 0.95 })
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

  const judged = () =>
    armDayEntries[0].run({
      rows,
      control: c.inputs.arms[0]!,
      question: 'gain',
      goodDirection: 'larger',
      margin: 1,
      confidence: 0.95,
      unit: 'doughs',
      correlation: 'model',
    })
  checkCase(c, ['analysis/judge-arm-days'], 'double precision, differences of numbers near 2500', [
    ['df of doughs', e.df_error, () => judged().df],
    ['residual mean square of doughs', e.ms_error, () => judged().errorSd! ** 2],
    ...e.contrasts.flatMap((contrast, i): Figure[] => [
      [`${contrast.arm} minus control, error from doughs`, contrast.estimate, () => judged().comparisons[i]!.estimate],
      [`its standard error from doughs, ${contrast.arm}`, contrast.se, () => judged().comparisons[i]!.se!],
    ]),
  ])
}

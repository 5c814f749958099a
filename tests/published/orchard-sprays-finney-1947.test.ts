import { latinSquareAnova } from '@/lib/calc/comparison/latin-square'
import { checkCase } from '@/tests/support/published-case'
import cases from './data/orchard-sprays-finney-1947.json'

// Finney (1947), Probit Analysis: decrease in honey bees at eight strengths of a spray, in an 8 × 8 Latin square.
for (const c of cases) {
  const got = () => latinSquareAnova({ rows: c.inputs.rows, confidence: 0.95 })
  const e = c.expected
  checkCase(c, ['comparison/latin-square'], 'double precision', [
    ['sum of squares of rows', e.ss_row, () => got().anova[0]!.sumSquares],
    ['sum of squares of columns', e.ss_column, () => got().anova[1]!.sumSquares],
    ['sum of squares of arms', e.ss_arm, () => got().anova[2]!.sumSquares],
    ['residual sum of squares', e.ss_error, () => got().anova[3]!.sumSquares],
    ['residual mean square', e.ms_error, () => got().residualSd ** 2],
    ['df of rows', e.df_row, () => got().anova[0]!.df],
    ['df of columns', e.df_column, () => got().anova[1]!.df],
    ['df of arms', e.df_arm, () => got().anova[2]!.df],
    ['residual df', e.df_error, () => got().residualDf],
    ['F of arms', e.F_arm, () => got().anova[2]!.f!],
    ['p of arms', e.p_arm, () => got().anova[2]!.p!, c.tolerance.fields.p_arm],
    ['standard error of a difference', e.se_difference, () => got().differenceSe],
    ...e.means.map((mean, i): [string, number, () => number] => {
      const arm = c.inputs.arms[i]!
      return [`mean of ${arm}`, mean, () => got().arms.find((row) => row.arm === arm)!.mean]
    }),
  ])
}

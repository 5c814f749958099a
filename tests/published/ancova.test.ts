import { ancova } from '@/lib/calc/comparison/ancova'
import { checkCase, type Figure } from '@/tests/support/published-case'
import cases from './data/ancova.json'

for (const c of cases) {
  const got = () => ancova({ rows: c.inputs.rows, control: c.inputs.arms[0]!, confidence: 0.95 })
  const e = c.expected
  const p = c.tolerance.fields.p
  checkCase(c, ['comparison/ancova'], 'double precision', [
    ['mean of the covariate', e.covariate_mean, () => got().covariateMean],
    ['slope', e.slope, () => got().slope.estimate],
    ['its standard error', e.slope_se, () => got().slope.se],
    ['residual df', e.df_error, () => got().residualDf],
    ['residual mean square', e.ms_error, () => got().residualSd ** 2],
    ['F of arm', e.F_arm, () => got().armTest.f],
    ['p of arm', e.p_arm, () => got().armTest.p, p],
    ['F of the covariate', e.F_covariate, () => got().covariateTest.f],
    ['p of the covariate', e.p_covariate, () => got().covariateTest.p, p],
    ['F of the interaction', e.F_interaction, () => got().interactionTest!.f],
    ['p of the interaction', e.p_interaction, () => got().interactionTest!.p, p],
    ['df of the interaction', e.df_interaction, () => got().interactionTest!.df1],
    ['error df of the interaction', e.df_error_interaction, () => got().interactionTest!.df2],
    ...e.adjusted_means.flatMap((mean, i): Figure[] => [
      [`adjusted mean of ${mean.arm}`, mean.estimate, () => got().adjustedMeans[i]!.estimate],
      [`its standard error, ${mean.arm}`, mean.se, () => got().adjustedMeans[i]!.se],
    ]),
    ...e.contrasts.flatMap((contrast, i): Figure[] => [
      [`${contrast.arm} minus control`, contrast.estimate, () => got().differences[i]!.estimate],
      [`its standard error, ${contrast.arm}`, contrast.se, () => got().differences[i]!.se],
      [`its t, ${contrast.arm}`, contrast.t, () => got().differences[i]!.t],
      [`its p, ${contrast.arm}`, contrast.p, () => got().differences[i]!.p, p],
    ]),
  ])
}

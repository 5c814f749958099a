import { doseForTarget } from '@/lib/calc/dose-response/dose-for-target'
import { fitCurve } from '@/lib/calc/dose-response/fit-curve'
import type { CurveModel } from '@/lib/calc/dose-response/types'
import { checkCase, type Figure } from '@/tests/support/published-case'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/dose-curves.json'

for (const c of cases) {
  const q = {
    rows: c.inputs.rows,
    model: c.inputs.model.replace('emax', 'saturating') as CurveModel,
    ...(c.inputs.fixed_e0 === undefined ? {} : { fixedE0: c.inputs.fixed_e0 }),
    confidence: 0.95,
  }
  const got = () => fitCurve(q)
  const e = c.expected
  const loose = c.tolerance.fields.se
  const where = (what: string, expected: number | undefined, value: () => number, tolerance?: number): Figure[] =>
    expected === undefined ? [] : [[what, expected, value, tolerance]]
  checkCase(c, ['dose-response/fit-curve'], 'the second route derives numerically', [
    ...e.parameters.flatMap((parameter): Figure[] => {
      const own = () => got().parameters.find(({ name }) => name === parameter.name)!
      return [
        [parameter.name, parameter.estimate, () => own().estimate],
        [`its standard error, ${parameter.name}`, parameter.se, () => own().se, loose],
      ]
    }),
    ['residual sum of squares', e.rss, () => got().residualSumSquares],
    ['residual df', e.df_residual, () => got().residualDf],
    ['residual SD', e.residual_sd, () => got().residualSd],
    ['sum of squares of pure error', e.ss_pure_error, () => got().pureErrorSumSquares],
    ['df of pure error', e.df_pure_error, () => got().pureErrorDf],
    ['F of lack of fit', e.F_lack_of_fit, () => got().lackOfFit!.f],
    ['df of lack of fit', e.df_lack_of_fit, () => got().lackOfFit!.df1],
    ['p of lack of fit', e.p_lack_of_fit, () => got().lackOfFit!.p, loose],
    ...where('dose at the turn', e.vertex_dose, () => got().vertex!.dose),
    ...where('its standard error', e.vertex_dose_se, () => got().vertex!.se, loose),
    ...where('value at the turn', e.vertex_response, () => got().vertex!.response),
  ])
  const target = () => doseForTarget({ ...q, targetResponse: c.inputs.target_response })
  checkCase(c, ['dose-response/dose-for-target'], 'the second route derives numerically', [
    ['dose for the target', e.target_dose, () => target().dose],
    ['its standard error', e.target_dose_se, () => target().se, loose],
    ...where('low, by Fieller', e.target_dose_fieller_lower, () => target().fiellerLow!),
    ...where('high, by Fieller', e.target_dose_fieller_upper, () => target().fiellerHigh!),
  ])
}

const printed: [string, CurveModel, number, string, 'estimate' | 'se', number, number][] = [
  ['largest effect', 'saturating', 0, 'emax', 'estimate', 212.7, 0.05],
  ['its standard error', 'saturating', 0, 'emax', 'se', 6.947, 0.0005],
  ['dose of half the effect', 'saturating', 0, 'ed50', 'estimate', 0.06412, 0.000005],
  ['its standard error', 'saturating', 0, 'ed50', 'se', 0.008281, 0.0000005],
]
for (const [what, model, fixedE0, name, figure, expected, absolute] of printed) {
  publishedCheck({
    of: ['dose-response/fit-curve'],
    what: `puromycin, treated: ${what}`,
    source: 'Bates & Watts (1988), Nonlinear Regression Analysis and Its Applications, appendix 1, A1.3',
    status: 'from memory',
    expected,
    got: () =>
      fitCurve({ rows: cases[0]!.inputs.rows, model, fixedE0, confidence: 0.95 }).parameters.find(
        (row) => row.name === name,
      )![figure],
    tolerance: { absolute },
    why: 'half of the last printed digit',
  })
}

import { fitMixedModel, type JointTest, type MixedFit } from '@/lib/calc/mixed-model/fit-mixed-model'
import { publishedCheck } from './published-check'

type Figures = Partial<Record<string, number>>

export type MixedCase = {
  source: string
  computedWith: string
  checkedWith: string
  tolerance: { rel: number; fields: Record<string, number>; zero_abs: number }
  expected: {
    variance_components: Figures
    residual_variance: number
    reml_criterion: number
    boundary: boolean
    intercept: Figures
    contrasts: readonly (Figures | { arm: string })[]
    arm_test?: Figures
  }
}

/**
 * Checks a mixed model figure by figure; the names of the expected figures are those of the fixture.
 * @param question asked when the checks run, for data that comes out of a database
 */
export function checkMixedModel(c: MixedCase, question: () => Parameters<typeof fitMixedModel>[0]): void {
  const { expected, tolerance } = c
  const check = (
    what: string,
    field: string,
    value: number | undefined,
    got: (fit: MixedFit) => number | undefined,
  ) => {
    if (value === undefined) return
    publishedCheck({
      of: ['mixed-model/fit-mixed-model'],
      what,
      source: c.source,
      status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
      expected: value,
      got: () => got(fitMixedModel(question())) ?? NaN,
      tolerance:
        value === 0 ? { absolute: tolerance.zero_abs } : { relative: tolerance.fields[field] ?? tolerance.rel },
      why: 'the worst difference between the two routes, with room; df depend on a Hessian',
    })
  }
  const checkEach = (what: string, figures: Figures, got: Record<string, (fit: MixedFit) => number | undefined>) => {
    for (const [field, value] of Object.entries(got)) check(`${what}: ${field}`, field, figures[field], value)
  }

  check('REML criterion', 'reml_criterion', expected.reml_criterion, (fit) => fit.remlCriterion)
  check('residual variance', 'residual_variance', expected.residual_variance, (fit) => fit.residualVariance)
  for (const [name, variance] of Object.entries(expected.variance_components)) {
    check(
      `variance of ${name}`,
      '@variance_components',
      variance,
      (fit) => fit.varianceComponents.find((own) => own.name === name)?.variance,
    )
  }
  check('a variance is at zero', 'boundary', Number(expected.boundary), (fit) => Number(fit.boundary))
  checkEach('intercept', expected.intercept, {
    estimate: (fit) => fit.intercept.estimate,
    se: (fit) => fit.intercept.se,
    df_satterthwaite: (fit) => fit.intercept.satterthwaite?.df,
  })
  expected.contrasts.forEach((contrast, i) => {
    const of = (fit: MixedFit) => fit.differences[i]
    checkEach(`arm ${i + 2} minus control`, contrast as Figures, {
      estimate: (fit) => of(fit)?.estimate,
      se: (fit) => of(fit)?.se,
      df_satterthwaite: (fit) => of(fit)?.satterthwaite?.df,
      p_satterthwaite: (fit) => of(fit)?.satterthwaite?.p,
      se_kenward_roger: (fit) => of(fit)?.kenwardRoger?.se,
      df_kenward_roger: (fit) => of(fit)?.kenwardRoger?.df,
      p_kenward_roger: (fit) => of(fit)?.kenwardRoger?.p,
    })
  })
  const tested = (fit: MixedFit, by: 'satterthwaite' | 'kenwardRoger'): JointTest | null | undefined =>
    fit.tests.find(({ term }) => term === 'arm')?.[by]
  checkEach('joint test of the arms', expected.arm_test ?? {}, {
    ndf: (fit) => tested(fit, 'kenwardRoger')?.df1,
    F_kenward_roger: (fit) => tested(fit, 'kenwardRoger')?.f,
    ddf_kenward_roger: (fit) => tested(fit, 'kenwardRoger')?.df2,
    p_kenward_roger: (fit) => tested(fit, 'kenwardRoger')?.p,
    F_satterthwaite: (fit) => tested(fit, 'satterthwaite')?.f,
    ddf_satterthwaite: (fit) => tested(fit, 'satterthwaite')?.df2,
    p_satterthwaite: (fit) => tested(fit, 'satterthwaite')?.p,
  })
}

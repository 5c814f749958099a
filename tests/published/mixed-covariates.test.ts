import { describe } from 'vitest'
import { fitMixedModel } from '@/lib/calc/mixed-model/fit-mixed-model'
import { checkMixedModel } from '@/tests/support/mixed-model-figures'
import { publishedCheck } from '@/tests/support/published-check'
import data from './data/mixed-covariates.json'

// Made-up trials; data/mixed-covariates.py made them and the figures.
const common = {
  source: 'made-up trials, data/mixed-covariates.py',
  computedWith: 'statsmodels 0.15.0: MixedLM.fit(reml=True)',
  checkedWith: 'NumPy 2.4.6, SciPy 1.17.1: n × n matrices, Kenward & Roger (1997), central differences',
  tolerance: {
    rel: 1e-5,
    fields: { '@variance_components': 1e-4, residual_variance: 1e-4, reml_criterion: 1e-9, df_satterthwaite: 1e-4 },
    zero_abs: 0,
  },
}

describe.each(data)('$title', ({ inputs, expected }) => {
  const q = {
    rows: inputs.rows.map(({ arm, batch, block, level, tempC, y }) => ({
      arm,
      factors: { batch, block, level },
      covariates: { tempC },
      y,
    })),
    model: {
      arms: ['arm 0', 'arm 1', 'arm 2'],
      fixed: ['level'],
      covariates: ['tempC'],
      ...(inputs.by_arm ? { byArm: 'level' } : {}),
      random: inputs.random,
    },
  }
  checkMixedModel({ ...common, expected }, () => q)
  publishedCheck({
    of: ['mixed-model/fit-mixed-model'],
    what: 'slope of the covariate',
    source: common.source,
    status: `computed with ${common.computedWith}`,
    expected: expected.slope,
    got: () => fitMixedModel(q).coefficients.find(({ term }) => term === 'tempC')!.estimate,
    tolerance: 1e-5,
    why: 'the program stops at about 3e-5 of a variance',
  })
})

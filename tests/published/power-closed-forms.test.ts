import { describe } from 'vitest'
import type { CalcId } from '@/lib/calc/catalogue'
import { anovaPower } from '@/lib/calc/plan/anova-power'
import { anovaSize } from '@/lib/calc/plan/anova-size'
import { batchesPower } from '@/lib/calc/plan/batches-power'
import { batchesSize } from '@/lib/calc/plan/batches-size'
import { cheapestDesign } from '@/lib/calc/plan/cheapest-design'
import type { CountForPower } from '@/lib/calc/plan/count-for-power'
import { dunnettPower } from '@/lib/calc/plan/dunnett-power'
import { pairedPower } from '@/lib/calc/plan/paired-power'
import { twoArmsPower } from '@/lib/calc/plan/two-arms-power'
import { twoArmsSize } from '@/lib/calc/plan/two-arms-size'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/power-closed-forms.json'

type Inputs = Partial<Record<string, number | string | number[]>>
type Figures = Record<string, number | number[]>

const number = (inputs: Inputs, name: string) => Number(inputs[name])
const list = (inputs: Inputs, name: string) => [inputs[name]].flat().map(Number)
const asked = (inputs: Inputs) => ({
  alpha: number(inputs, 'alpha'),
  alternative: inputs.alternative === 'greater' ? ('greater' as const) : ('two-sided' as const),
})
const twoArms = (inputs: Inputs) => ({
  ...asked(inputs),
  difference: Number(inputs.delta ?? inputs.percent_difference),
  sd: Number(inputs.sd ?? inputs.cv_percent),
})
const batches = (inputs: Inputs) => ({
  ...asked(inputs),
  difference: number(inputs, 'delta'),
  loavesPerBatch: number(inputs, 'loaves_per_batch'),
  batchSd: number(inputs, 'sd_batch'),
  loafSd: number(inputs, 'sd_loaf'),
})
const anova = (inputs: Inputs) => ({
  alpha: number(inputs, 'alpha'),
  means: list(inputs, 'means'),
  sd: number(inputs, 'sd'),
})

const size = ({ count, countContinuous, power }: CountForPower) => ({
  n_per_arm: count,
  n_continuous: countContinuous ?? NaN,
  achieved_power: power,
})

/** The calculation of the catalogue that a case is of, and its figures by the names of the case. */
function answer(op: string, inputs: Inputs): { of: readonly CalcId[]; figures: () => Figures } {
  const wanted = inputs.power === undefined ? null : { power: number(inputs, 'power') }
  switch (op) {
    case 't2':
    case 't2_cv':
      return wanted
        ? { of: ['plan/two-arms-size'], figures: () => size(twoArmsSize({ ...twoArms(inputs), ...wanted })) }
        : {
            of: ['plan/two-arms-power'],
            figures: () => twoArmsPower({ ...twoArms(inputs), countPerArm: number(inputs, 'n_per_arm') }),
          }
    case 't_paired': {
      const q = {
        ...asked(inputs),
        pairs: number(inputs, 'n_pairs'),
        difference: number(inputs, 'delta'),
        sdOfDifferences: number(inputs, 'sd_of_differences'),
      }
      return { of: ['plan/paired-power'], figures: () => pairedPower(q) }
    }
    case 'batches':
      return {
        of: ['plan/batches-size', 'plan/batches-power'],
        figures: () => {
          const found = batchesSize({ ...batches(inputs), power: number(inputs, 'power') })
          const fewer = batchesPower({ ...batches(inputs), batchesPerArm: found.count - 1 }).power
          return {
            batches_per_arm: found.count,
            achieved_power: found.power,
            power_one_fewer: found.powerOneFewer === fewer ? fewer : NaN,
          }
        },
      }
    case 'anova':
      return wanted
        ? {
            of: ['plan/anova-size'],
            figures: () => {
              const found = anovaSize({ ...anova(inputs), ...wanted })
              return { ...size(found), f_effect: found.effectSize }
            },
          }
        : {
            of: ['plan/anova-power'],
            figures: () => {
              const got = anovaPower({ ...anova(inputs), countPerArm: number(inputs, 'n_per_arm') })
              return { ...got, f_effect: got.effectSize }
            },
          }
    default: {
      const q = {
        ...asked(inputs),
        controlCount: number(inputs, 'n_control'),
        armCount: number(inputs, 'n_treatment'),
        differences: list(inputs, 'deltas'),
        sd: number(inputs, 'sd'),
      }
      return {
        of: ['plan/dunnett-power'],
        figures: () => {
          const got = dunnettPower(q)
          return { df: got.df, critical_value: got.criticalValue, power_each: got.powerEach, power_any: got.powerAny }
        },
      }
    }
  }
}

describe.each(cases)('$title', (c) => {
  const { of, figures } = answer(c.op, c.inputs)
  for (const [name, value] of Object.entries(c.expected)) {
    ;[value].flat().forEach((expected, i) =>
      publishedCheck({
        of,
        what: `${c.id}: ${name}${Array.isArray(value) ? ` ${i + 1}` : ''}`,
        source: c.source,
        status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
        expected,
        got: () => [figures()[name] ?? NaN].flat()[i] ?? NaN,
        tolerance: 1e-9,
        why: 'stated accuracy; a count cannot be off by less than one',
      }),
    )
  }
})

// With next to no worthwhile difference 'better' is one side of the two-sided interval: twice the one-sided α.
describe('the cheapest design of two arms, one dough each a day without blocks, is the sample size', () => {
  const c = cases.find(({ id }) => id === 'n-t-doc-one')!
  const found = () =>
    cheapestDesign({
      layout: 'no-blocks',
      testArmCount: 1,
      trueDifference: number(c.inputs, 'delta'),
      worthwhile: 1e-9,
      confidence: 1 - 2 * number(c.inputs, 'alpha'),
      power: number(c.inputs, 'power'),
      blockSd: 0,
      batchSd: number(c.inputs, 'sd'),
      loafSd: 0,
      blockCostMinor: 100,
      batchCostMinor: 10,
      loafCostMinor: 1,
      leastBlocks: 1,
      mostBlocks: 40,
      mostBatchesPerBlock: 2,
      mostLoavesPerBatch: 1,
      seed: 'published',
      runs: 20_000,
    })
  const check = {
    of: ['plan/cheapest-design'] as const,
    source: c.source,
    status: `computed with ${c.computedWith}; second route: ${c.checkedWith}`,
  }
  const { n_per_arm: count = NaN, achieved_power: power = NaN } = c.expected
  publishedCheck({
    ...check,
    what: 'doughs of each arm',
    expected: count,
    got: () => found().designs[0]!.blocks,
    tolerance: 0,
    why: 'a count',
  })
  publishedCheck({
    ...check,
    what: 'its power',
    expected: power,
    got: () => found().designs[0]!.power,
    tolerance: 1e-6,
    why: 'stated accuracy',
  })
  publishedCheck({
    ...check,
    what: 'its power, simulated',
    expected: power,
    got: () => found().simulated.power,
    tolerance: { absolute: 0.0085 },
    why: 'four Monte Carlo standard errors of 20,000 runs',
  })
})

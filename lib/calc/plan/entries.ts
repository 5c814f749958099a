import { z } from 'zod'
import { calcEntry } from '../entry'
import { anovaPower } from './anova-power'
import { anovaSize } from './anova-size'
import { batchesPower } from './batches-power'
import { batchesSize } from './batches-size'
import { dunnettPower } from './dunnett-power'
import { dunnettSize } from './dunnett-size'
import { pairedPower } from './paired-power'
import { pairedSize } from './paired-size'
import { twoArmsPower } from './two-arms-power'
import { twoArmsSize } from './two-arms-size'

const alternative = z.enum(['two-sided', 'greater', 'less'])
const asked = { difference: z.number(), alpha: z.number(), alternative }
const batched = { loavesPerBatch: z.number(), batchSd: z.number(), loafSd: z.number(), ...asked }
const againstControl = { differences: z.array(z.number()), sd: z.number(), alpha: z.number(), alternative }
const severalArms = { means: z.array(z.number()), sd: z.number(), alpha: z.number() }
const wanted = { power: z.number() }
const ofTest = z.strictObject({ power: z.number(), df: z.number(), noncentrality: z.number() })
const size = { count: z.number(), countContinuous: z.nullable(z.number()), power: z.number(), powerOneFewer: z.nullable(z.number()) }

const twoSided = { alpha: 0.05, alternative: 'two-sided' as const }

export const planEntries = [
  // Power, numbers for a wanted power, and the cheapest design
  calcEntry({
    id: 'plan/two-arms-power',
    input: z.strictObject({ countPerArm: z.number(), sd: z.number(), ...asked }),
    output: ofTest,
    example: { countPerArm: 20, difference: 1, sd: 1, ...twoSided },
    source: "Noncentral t; R's power.t.test(strict = TRUE)",
    run: twoArmsPower,
  }),
  calcEntry({
    id: 'plan/two-arms-size',
    input: z.strictObject({ ...wanted, sd: z.number(), ...asked }),
    output: z.strictObject(size),
    example: { power: 0.8, difference: 5, sd: 4, ...twoSided },
    source: "Noncentral t; R's power.t.test(strict = TRUE)",
    run: twoArmsSize,
  }),
  calcEntry({
    id: 'plan/paired-power',
    input: z.strictObject({ pairs: z.number(), sdOfDifferences: z.number(), ...asked }),
    output: ofTest,
    example: { pairs: 10, difference: 40, sdOfDifferences: 40, ...twoSided },
    source: "Noncentral t; R's power.t.test(type = 'paired', strict = TRUE)",
    run: pairedPower,
  }),
  calcEntry({
    id: 'plan/paired-size',
    input: z.strictObject({ ...wanted, sdOfDifferences: z.number(), ...asked }),
    output: z.strictObject(size),
    example: { power: 0.8, difference: 40, sdOfDifferences: 40, ...twoSided },
    source: "Noncentral t; R's power.t.test(type = 'paired', strict = TRUE)",
    run: pairedSize,
  }),
  calcEntry({
    id: 'plan/batches-power',
    input: z.strictObject({ batchesPerArm: z.number(), ...batched }),
    output: ofTest,
    example: { batchesPerArm: 5, loavesPerBatch: 3, batchSd: 40, loafSd: 30, difference: 100, ...twoSided },
    source: 'Noncentral t on batch means; Searle (1971), Linear Models',
    run: batchesPower,
  }),
  calcEntry({
    id: 'plan/batches-size',
    input: z.strictObject({ ...wanted, ...batched }),
    output: z.strictObject(size),
    example: { power: 0.8, loavesPerBatch: 3, batchSd: 40, loafSd: 30, difference: 100, ...twoSided },
    source: 'Noncentral t on batch means; Searle (1971), Linear Models',
    run: batchesSize,
  }),
  calcEntry({
    id: 'plan/anova-power',
    input: z.strictObject({ countPerArm: z.number(), ...severalArms }),
    output: z.strictObject({ power: z.number(), df1: z.number(), df2: z.number(), noncentrality: z.number(), effectSize: z.number() }),
    example: { countPerArm: 5, means: [2400, 2450, 2450, 2500], sd: 60, alpha: 0.05 },
    source: 'Noncentral F; Cohen (1988), Statistical Power Analysis for the Behavioral Sciences, chapter 8',
    run: anovaPower,
  }),
  calcEntry({
    id: 'plan/anova-size',
    input: z.strictObject({ ...wanted, ...severalArms }),
    output: z.strictObject({ ...size, effectSize: z.number() }),
    example: { power: 0.8, means: [2400, 2450, 2450, 2500], sd: 60, alpha: 0.05 },
    source: 'Noncentral F; Cohen (1988), Statistical Power Analysis for the Behavioral Sciences, chapter 8',
    run: anovaSize,
  }),
  calcEntry({
    id: 'plan/dunnett-power',
    input: z.strictObject({ controlCount: z.number(), armCount: z.number(), ...againstControl }),
    output: z.strictObject({ df: z.number(), criticalValue: z.number(), powerEach: z.array(z.number()), powerAny: z.number() }),
    example: { controlCount: 6, armCount: 6, differences: [80, 40], sd: 50, ...twoSided },
    source: 'Dunnett (1955), JASA 50; noncentral multivariate t',
    run: dunnettPower,
  }),
  calcEntry({
    id: 'plan/dunnett-size',
    input: z.strictObject({ ...wanted, goal: z.enum(['each', 'any']), ...againstControl }),
    output: z.strictObject(size),
    example: { power: 0.8, goal: 'each', differences: [80, 60], sd: 50, ...twoSided },
    source: 'Dunnett (1955), JASA 50; noncentral multivariate t',
    run: dunnettSize,
  }),
] as const

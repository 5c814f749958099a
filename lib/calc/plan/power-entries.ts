import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { anovaPower } from './anova-power'
import { anovaSize } from './anova-size'
import { batchesPower } from './batches-power'
import { batchesSize } from './batches-size'
import { cheapestDesign } from './cheapest-design'
import { dunnettPower } from './dunnett-power'
import { dunnettSize } from './dunnett-size'
import { pairedPower } from './paired-power'
import { pairedSize } from './paired-size'
import { twoArmsPower } from './two-arms-power'
import { twoArmsSize } from './two-arms-size'

const layout = z.enum(['complete-blocks', 'no-blocks'])
const alternative = z.enum(['two-sided', 'greater', 'less'])
const asked = { difference: z.number(), alpha: z.number(), alternative }
const batched = { loavesPerBatch: z.number(), batchSd: z.number(), loafSd: z.number(), ...asked }
const againstControl = { differences: z.array(z.number()), sd: z.number(), alpha: z.number(), alternative }
const severalArms = { means: z.array(z.number()), sd: z.number(), alpha: z.number() }
const wanted = { power: z.number() }
const ofTest = z.strictObject({ power: z.number(), df: z.number(), noncentrality: z.number() })
const size = {
  count: z.number(),
  countContinuous: z.nullable(z.number()),
  power: z.number(),
  powerOneFewer: z.nullable(z.number()),
}

const twoSided = { alpha: 0.05, alternative: 'two-sided' as const }

export const powerEntries = [
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
    output: z.strictObject({
      power: z.number(),
      df1: z.number(),
      df2: z.number(),
      noncentrality: z.number(),
      effectSize: z.number(),
    }),
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
    output: z.strictObject({
      df: z.number(),
      criticalValue: z.number(),
      powerEach: z.array(z.number()),
      powerAny: z.number(),
    }),
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
  calcEntry({
    id: 'plan/cheapest-design',
    input: z.strictObject({
      layout,
      testArmCount: z.number(),
      trueDifference: z.number(),
      worthwhile: z.number(),
      confidence: z.number(),
      ...wanted,
      blockSd: z.number(),
      batchSd: z.number(),
      loafSd: z.number(),
      blockCostMinor: z.number(),
      batchCostMinor: z.number(),
      loafCostMinor: z.number(),
      leastBlocks: z.number(),
      mostBlocks: z.number(),
      mostBatchesPerBlock: z.number(),
      mostLoavesPerBatch: z.number(),
      seed: z.string(),
      runs: z.number(),
    }),
    output: z.strictObject({
      method: z.enum(['closed-form-search-confirmed-by-simulation']),
      designs: z.array(
        z.strictObject({
          blocks: z.number(),
          armBatchesPerBlock: z.number(),
          controlBatchesPerBlock: z.number(),
          loavesPerBatch: z.number(),
          batches: z.number(),
          loaves: z.number(),
          costMinor: z.number(),
          residualDf: z.number(),
          criticalValue: z.number(),
          differenceSe: z.number(),
          power: z.number(),
        }),
      ),
      simulated: z.strictObject({ runs: z.number(), power: z.number(), powerSe: z.number() }),
    }),
    example: {
      layout: 'complete-blocks',
      testArmCount: 2,
      trueDifference: 7.5,
      worthwhile: 5,
      confidence: 0.95,
      power: 0.8,
      blockSd: 2,
      batchSd: 3,
      loafSd: 2.5,
      blockCostMinor: 2000,
      batchCostMinor: 900,
      loafCostMinor: 60,
      leastBlocks: 2,
      mostBlocks: 12,
      mostBatchesPerBlock: 10,
      mostLoavesPerBatch: 6,
      seed: 'cheapest',
      runs: 10_000,
    },
    source: 'Search by the closed form of the verdict rule; extra control doughs by Dunnett (1955), JASA 50',
    run: (q) => atFlatFields({ differenceSe: 'batchSd' }, () => cheapestDesign(q)),
  }),
] as const

import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { correctShare } from './correct-share'
import { dPrime } from './d-prime'
import { differenceServings } from './difference-servings'
import { discriminationP } from './discrimination-p'
import { discriminationPower } from './discrimination-power'
import { discriminators } from './discriminators'
import { friedman } from './friedman'
import { leastCorrect } from './least-correct'
import { leastCorrectTable } from './least-correct-table'
import { leastRankDifference } from './least-rank-difference'
import { liking } from './liking'
import { mostCorrect } from './most-correct'
import { pageTrend } from './page-trend'
import { servingOrders } from './serving-orders'
import { similarity } from './similarity'
import { tastersForSimilarity } from './tasters-for-similarity'
import { tastersNeeded } from './tasters-needed'

const number = z.number()
const knownAnswerTest = z.enum(['triangle', 'duo-trio', 'paired', 'three-afc'])
const differenceTest = z.enum(['triangle', 'duo-trio', 'paired', 'paired-two-sided', 'three-afc'])
const effectKind = z.enum(['d-prime', 'correct-share', 'discriminator-share'])
const limitMethod = z.enum(['exact', 'normal'])
const orNull = z.nullable(number)
const answered = { test: knownAnswerTest, tasters: number, correct: number }
const margin = { marginShare: number, confidence: number }
const leastOutput = { correct: orNull, actualAlpha: orNull }
const tellersOutput = {
  correctShare: number,
  discriminatorShare: number,
  highShare: number,
  warnings: z.array(z.enum(['below-chance', 'few-tasters'])),
}
const tastersOutput = z.strictObject({ tasters: number, powerReached: number, steadyTasters: number })
const scores = z.array(z.strictObject({ taster: z.string(), sample: z.string(), score: number }))
const rankSums = z.array(z.strictObject({ sample: z.string(), rankSum: number }))
const batch = { sample: z.string(), batch: z.string(), allergens: z.string() }
const samples = z.array(z.strictObject(batch))
const difference = { estimate: number, se: number, t: number, pAdjusted: number, low: number, high: number }
const preferences = { preferSampleShare: number, preferControlShare: number, alikeShare: number }
const servingKey = z.strictObject({
  servings: z.array(z.strictObject({ taster: number, place: number, code: z.string(), ...batch })),
  warnings: z.array(z.strictObject({ code: z.enum(['one-batch', 'orders-not-even']), sample: z.nullable(z.string()) })),
  cautions: z.array(z.enum(['baked-only', 'ask-allergens-first', 'key-with-leader'])),
})

/** Invented panel: four tasters, three samples of a seeded roll. */
const invented = (rows: Readonly<Record<string, readonly [number, number, number]>>) =>
  Object.entries(rows).flatMap(([taster, given]) =>
    ['control', 'malt 1 %', 'malt 2 %'].map((sample, i) => ({ taster, sample, score: given[i]! })),
  )
const inventedBatches = [
  { sample: 'control', batch: 'Monday', allergens: 'wheat' },
  { sample: 'control', batch: 'Tuesday', allergens: 'wheat' },
  { sample: 'malt 1 %', batch: 'Monday', allergens: 'wheat, barley' },
  { sample: 'malt 1 %', batch: 'Tuesday', allergens: 'wheat, barley' },
]

const POWER = 'exact binomial; D. M. Ennis, Journal of Sensory Studies 8, 1993'
const EXACT = 'exact binomial: ISO 4120 (triangle), ISO 10399 (duo-trio), ISO 5495 (paired comparison)'

export const panelEntries = [
  calcEntry({
    id: 'panel/discrimination-p',
    input: z.strictObject({ test: differenceTest, tasters: number, correct: number }),
    output: z.strictObject({ p: number }),
    example: { test: 'triangle', tasters: 30, correct: 16 },
    source: EXACT,
    run: (q) => ({ p: discriminationP(q) }),
  }),
  calcEntry({
    id: 'panel/least-correct',
    input: z.strictObject({ test: differenceTest, tasters: number, alpha: number }),
    output: z.strictObject(leastOutput),
    example: { test: 'duo-trio', tasters: 28, alpha: 0.05 },
    source: EXACT,
    run: leastCorrect,
  }),
  calcEntry({
    id: 'panel/least-correct-table',
    input: z.strictObject({ test: differenceTest, fromTasters: number, toTasters: number, alphas: z.array(number) }),
    output: z.strictObject({ rows: z.array(z.strictObject({ tasters: number, alpha: number, ...leastOutput })) }),
    example: { test: 'triangle', fromTasters: 18, toTasters: 24, alphas: [0.05, 0.01] },
    source: EXACT,
    run: (q) => ({ rows: atFlatFields({ alpha: 'alphas' }, () => leastCorrectTable(q)) }),
  }),
  calcEntry({
    id: 'panel/correct-share',
    input: z.strictObject({ test: knownAnswerTest, dPrime: number }),
    output: z.strictObject({ correctShare: number, slope: number }),
    example: { test: 'three-afc', dPrime: 1.2 },
    source: 'D. M. Ennis, Journal of Sensory Studies 8, 1993',
    run: correctShare,
  }),
  calcEntry({
    id: 'panel/d-prime',
    input: z.strictObject({ ...answered, confidence: number }),
    output: z.strictObject({
      correctShare: number,
      correctLowShare: number,
      correctHighShare: number,
      dPrime: orNull,
      dPrimeLow: number,
      dPrimeHigh: orNull,
      standardError: orNull,
      warnings: z.array(z.enum(['at-or-below-chance', 'all-correct'])),
    }),
    example: { test: 'triangle', tasters: 36, correct: 19, confidence: 0.95 },
    source: "J. Bi, D. M. Ennis and M. O'Mahony, Journal of Sensory Studies 12, 1997",
    run: dPrime,
  }),
  calcEntry({
    id: 'panel/discriminators',
    input: z.strictObject({ ...answered, tailShare: number, method: limitMethod }),
    output: z.strictObject({ ...tellersOutput, lowShare: number }),
    example: { test: 'triangle', tasters: 60, correct: 25, tailShare: 0.05, method: 'exact' },
    source: 'ISO 4120, ISO 10399, ISO 5495; limits: C. Clopper and E. Pearson, Biometrika 26, 1934',
    run: discriminators,
  }),
  calcEntry({
    id: 'panel/similarity',
    input: z.strictObject({ ...answered, ...margin, method: limitMethod }),
    output: z.strictObject({ ...tellersOutput, similar: z.boolean() }),
    example: { test: 'triangle', tasters: 60, correct: 21, marginShare: 0.3, confidence: 0.95, method: 'exact' },
    source: 'ISO 4120, ISO 10399, ISO 5495, testing for similarity',
    run: similarity,
  }),
  calcEntry({
    id: 'panel/most-correct',
    input: z.strictObject({ test: knownAnswerTest, tasters: number, ...margin }),
    output: z.strictObject({ correct: orNull }),
    example: { test: 'triangle', tasters: 60, marginShare: 0.3, confidence: 0.95 },
    source: 'exact binomial: ISO 5495, table A.3',
    run: (q) => ({ correct: mostCorrect(q) }),
  }),
  calcEntry({
    id: 'panel/discrimination-power',
    input: z.strictObject({ test: differenceTest, tasters: number, alpha: number, effectKind, effect: number }),
    output: z.strictObject({ leastCorrect: orNull, actualAlpha: orNull, correctShare: number, power: number }),
    example: { test: 'triangle', tasters: 36, alpha: 0.05, effectKind: 'd-prime', effect: 1.5 },
    source: POWER,
    run: discriminationPower,
  }),
  calcEntry({
    id: 'panel/tasters-needed',
    input: z.strictObject({ test: differenceTest, alpha: number, power: number, effectKind, effect: number }),
    output: tastersOutput,
    example: { test: 'triangle', alpha: 0.05, power: 0.8, effectKind: 'discriminator-share', effect: 0.3 },
    source: POWER,
    run: tastersNeeded,
  }),
  calcEntry({
    id: 'panel/tasters-for-similarity',
    input: z.strictObject({ test: knownAnswerTest, ...margin, trueShare: number, power: number }),
    output: tastersOutput,
    example: { test: 'triangle', marginShare: 0.3, confidence: 0.95, trueShare: 0, power: 0.8 },
    source: 'exact binomial: ISO 5495, table A.3',
    run: tastersForSimilarity,
  }),
  calcEntry({
    id: 'panel/friedman',
    input: z.strictObject({ scores, alpha: number }),
    output: z.strictObject({
      tasters: number,
      rankSums,
      chiSquared: number,
      df: number,
      p: number,
      f: orNull,
      dfNumerator: number,
      dfDenominator: number,
      pOfF: orNull,
      leastDifference: number,
      pairs: z.array(
        z.strictObject({ sample: z.string(), other: z.string(), difference: number, significant: z.boolean() }),
      ),
      warnings: z.array(z.enum(['ties', 'full-agreement'])),
    }),
    example: { scores: invented({ Ada: [1, 2, 3], Ben: [1, 3, 2], Cleo: [2, 1, 3], Dov: [1, 2, 3] }), alpha: 0.05 },
    source:
      'M. Friedman, JASA 32, 1937; ISO 8587; R. L. Iman and J. M. Davenport, Communications in Statistics A9, 1980',
    run: friedman,
  }),
  calcEntry({
    id: 'panel/least-rank-difference',
    input: z.strictObject({ tasters: number, samples: number, alpha: number }),
    output: z.strictObject({ leastDifference: number }),
    example: { tasters: 12, samples: 4, alpha: 0.05 },
    source: 'ISO 8587, ranking',
    run: (q) => ({ leastDifference: leastRankDifference(q) }),
  }),
  calcEntry({
    id: 'panel/page-trend',
    input: z.strictObject({ scores, order: z.array(z.strictObject({ sample: z.string() })) }),
    output: z.strictObject({
      tasters: number,
      rankSums,
      statistic: number,
      expected: number,
      variance: number,
      z: number,
      pNormal: number,
      pExact: orNull,
      warnings: z.array(z.enum(['ties', 'too-many-to-count'])),
    }),
    example: {
      scores: invented({ Ada: [1, 2, 3], Ben: [1, 3, 2], Cleo: [2, 1, 3], Dov: [1, 2, 3] }),
      order: [{ sample: 'control' }, { sample: 'malt 1 %' }, { sample: 'malt 2 %' }],
    },
    source: 'E. B. Page, JASA 58, 1963',
    run: ({ scores: rows, order }) => pageTrend({ scores: rows, order: order.map(({ sample }) => sample) }),
  }),
  calcEntry({
    id: 'panel/liking',
    input: z.strictObject({ scores, control: z.string(), confidence: number }),
    output: z.strictObject({
      tasters: number,
      means: z.array(z.strictObject({ sample: z.string(), mean: number, sd: number, low: orNull, high: orNull })),
      method: z.enum(['student-t', 'dunnett-product', 'dunnett-lattice']),
      df: number,
      criticalValue: number,
      comparisons: z.array(z.strictObject({ sample: z.string(), ...difference, ...preferences })),
      warnings: z.array(z.strictObject({ code: z.enum(['two-groups', 'all-scores-alike']), sample: z.string() })),
    }),
    example: {
      scores: invented({ Ada: [6, 7, 8], Ben: [5, 7, 4], Cleo: [7, 7, 8], Dov: [6, 8, 5] }),
      control: 'control',
      confidence: 0.95,
    },
    source: 'D. R. Peryam and F. J. Pilgrim, Food Technology 11, 1957; C. W. Dunnett, JASA 50, 1955',
    run: liking,
  }),
  calcEntry({
    id: 'panel/serving-orders',
    input: z.strictObject({ seed: z.string(), tasters: number, samples }),
    output: servingKey,
    example: { seed: 'panel, week 12', tasters: 4, samples: inventedBatches },
    source: 'E. J. Williams, Australian Journal of Scientific Research A2, 1949',
    run: servingOrders,
  }),
  calcEntry({
    id: 'panel/difference-servings',
    input: z.strictObject({ seed: z.string(), test: differenceTest, tasters: number, samples }),
    output: servingKey,
    example: { seed: 'panel, week 12', test: 'triangle', tasters: 6, samples: inventedBatches },
    source: 'ISO 4120 (triangle), ISO 10399 (duo-trio), ISO 5495 (paired comparison)',
    run: differenceServings,
  }),
] as const

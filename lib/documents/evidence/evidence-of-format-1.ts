import 'server-only'
import { z } from 'zod'
import { amount, conditionCode, conditions, declared, flags, frozen, good, trial } from './figures'

const fTest = z.strictObject({ f: z.number(), df1: z.number(), df2: z.number(), p: z.number() })
const sd = z.strictObject({ sd: z.number(), df: z.number() })

const effect = z.strictObject({
  estimate: z.number(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  pct: z.number().nullable(),
  lowPct: z.number().nullable(),
  highPct: z.number().nullable(),
  p: z.number().nullable(),
})

const arm = z.strictObject({
  arm: z.int(),
  id: z.string(),
  name: z.string(),
  standing: z.enum(['control', 'compared', 'look-only', 'no-batches']),
  batches: z.int(),
  loaves: z.int(),
  mean: z.number().nullable(),
  effect: effect.nullable(),
  verdict: z
    .strictObject({
      verdict: z.enum(['better', 'worse', 'no-worthwhile-difference', 'undecided', 'no-worse', 'same', 'different']),
      clearly: z.boolean(),
    })
    .nullable(),
  doubts: z.array(conditionCode),
  good: good.nullable(),
})

const limit = z.strictObject({
  code: z.enum([
    'stopped-early',
    'fewer-days',
    'one-day',
    'no-control',
    'one-batch-per-arm',
    'one-batch-in-control',
    'one-batch-in-arm',
    'arm-without-batches',
    'arm-on-one-day',
    'no-arms-left',
    'confounded-with-days',
    'no-degrees',
    'zero-variance',
    'too-many-doughs',
    'unequal-loaves',
    'margin-unusable',
    'no-direction',
    'look-only-asked',
    'levels-not-balanced',
    'levels-one-day',
    'not-computable',
  ]),
  arm: z.int().nullable(),
  facts: z.record(z.string(), z.number()),
})

const costs = z.strictObject({
  day: z.string(),
  currency: z.string().nullable(),
  latestPriceFrom: z.string().nullable(),
  arms: z.array(
    z.strictObject({
      arm: z.int(),
      unpriced: z.array(z.string()),
      mixedCurrencies: z.boolean(),
      good: good.nullable(),
      perBatch: amount,
      perPlannedPiece: amount,
      perGoodPiece: amount,
      perKg: amount,
      perLitre: amount,
      differencePerPlannedPiece: amount,
      differencePerGoodPiece: amount,
      breakEven: z
        .discriminatedUnion('outcome', [
          z.strictObject({ ingredient: z.string(), outcome: z.literal('price'), perKg: z.string() }),
          z.strictObject({ ingredient: z.string(), outcome: z.literal('never') }),
        ])
        .nullable(),
    }),
  ),
})

/** What a trial showed, as it was frozen with a decision. Numbers in full, amounts as decimal text, times in UTC. */
export const evidenceOfFormat1 = z.strictObject({
  format: z.literal(1),
  bakery: z.string(),
  trial,
  declared,
  /** Stopped before it was whole: an indication, and no verdict. */
  isIndication: z.boolean(),
  arms: z.array(arm),
  controlMean: z.number().nullable(),
  worthwhile: z.number().nullable(),
  method: z
    .strictObject({
      model: z.enum(['arm', 'arm-and-block']),
      adjustment: z.enum(['student-t', 'dunnett-product', 'dunnett-lattice']),
      limits: z.enum(['two-sided', 'one-sided-pair']),
      df: z.number(),
      batchSd: z.number(),
      armTest: fTest,
    })
    .nullable(),
  loafVariation: sd.nullable(),
  limits: z.array(limit),
  conditions,
  flags,
  uncounted: z.array(
    z.strictObject({
      batch: z.string(),
      code: z.string(),
      arm: z.int(),
      why: z.enum(['lost', 'set-aside', 'open', 'no-reading', 'level-missing', 'day-without-control']),
    }),
  ),
  /** For those who see costs. */
  costs,
  readings: z.strictObject({ count: z.int(), hash: z.string() }),
  frozen,
})

export type EvidenceOfFormat1 = z.output<typeof evidenceOfFormat1>

import 'server-only'
import { z } from 'zod'

const fTest = z.strictObject({ f: z.number(), df1: z.number(), df2: z.number(), p: z.number() })
const sd = z.strictObject({ sd: z.number(), df: z.number() })
const good = z.strictObject({ pieces: z.number(), batches: z.number() })
/** Decimal text, in major units of the currency. */
const amount = z.string().nullable()
const condition = z.enum(['dough-temp', 'proof-time', 'water-added'])

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
  doubts: z.array(condition),
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

const costOfArm = z.strictObject({
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
})

/** What a trial showed, as it was frozen with a decision. Numbers in full, amounts as decimal text, times in UTC. */
export const evidenceOfFormat1 = z.strictObject({
  format: z.literal(1),
  bakery: z.string(),
  trial: z.strictObject({
    id: z.string(),
    number: z.int(),
    question: z.string(),
    state: z.enum(['draft', 'proposed', 'approved', 'baking', 'closed', 'declined', 'stopped']),
    closedAt: z.string().nullable(),
    closedWhy: z.string().nullable(),
    /** Hash of the plan that was approved. */
    planHash: z.string().nullable(),
    formula: z.strictObject({ id: z.string(), name: z.string() }),
    controlVersion: z.strictObject({ id: z.string(), number: z.int(), contentHash: z.string().nullable() }),
  }),
  /** The rule, declared before baking. */
  declared: z.strictObject({
    kind: z.enum(['gain', 'no_worse', 'same_as', 'which_dose', 'look_only']),
    measure: z.strictObject({
      name: z.string(),
      unit: z.string(),
      digits: z.int(),
      direction: z.enum(['larger', 'smaller', 'none']),
    }),
    margin: z.number(),
    marginUnit: z.enum(['pct', 'unit']),
    confidencePct: z.number(),
    mixingDays: z.int(),
    batchesPerArm: z.int(),
    piecesPerBatch: z.int(),
    factor: z.strictObject({ name: z.string(), levels: z.array(z.string()) }).nullable(),
  }),
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
  conditions: z.array(
    z.strictObject({
      code: condition,
      arms: z.array(
        z.strictObject({
          arm: z.int(),
          mean: z.number().nullable(),
          recorded: z.int(),
          batches: z.int(),
          difference: z.number().nullable(),
          isNotable: z.boolean(),
        }),
      ),
    }),
  ),
  flags: z.array(
    z.strictObject({
      level: z.enum(['batch', 'loaf']),
      batchId: z.string(),
      code: z.string(),
      piece: z.int().nullable(),
      value: z.number(),
      p: z.number(),
    }),
  ),
  uncounted: z.array(
    z.strictObject({
      batch: z.string(),
      code: z.string(),
      arm: z.int(),
      why: z.enum(['lost', 'set-aside', 'open', 'no-reading', 'level-missing', 'day-without-control']),
    }),
  ),
  /** For those who see costs. */
  costs: z.strictObject({
    day: z.string(),
    currency: z.string().nullable(),
    latestPriceFrom: z.string().nullable(),
    arms: z.array(costOfArm),
  }),
  readings: z.strictObject({ count: z.int(), hash: z.string() }),
  frozen: z.strictObject({ at: z.string(), by: z.strictObject({ id: z.string(), name: z.string() }) }),
})

export type EvidenceOfFormat1 = z.output<typeof evidenceOfFormat1>

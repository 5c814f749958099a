import 'server-only'
import { z } from 'zod'

/** What format 1 and the parts of format 2 have alike. None of it may change: what was written with it is kept. */

export const good = z.strictObject({ pieces: z.number(), batches: z.number() })
export const conditionCode = z.enum(['dough-temp', 'proof-time', 'water-added'])
/** Decimal text, in major units of the currency. */
export const amount = z.string().nullable()

export const conditions = z.array(
  z.strictObject({
    code: conditionCode,
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
)

export const flags = z.array(
  z.strictObject({
    level: z.enum(['batch', 'loaf']),
    batchId: z.string(),
    code: z.string(),
    piece: z.int().nullable(),
    value: z.number(),
    p: z.number(),
  }),
)

export const trial = z.strictObject({
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
})

/** The rule, declared before baking. */
export const declared = z.strictObject({
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
})

export const frozen = z.strictObject({
  at: z.string(),
  by: z.strictObject({ id: z.string(), name: z.string() }),
})

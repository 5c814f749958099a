import 'server-only'
import { z } from 'zod'

const measure = z.strictObject({
  id: z.string(),
  code: z.string().nullable(),
  name: z.string(),
  unit: z.string(),
  digits: z.int(),
  level: z.enum(['batch', 'piece']),
  derivation: z.string().nullable(),
  repeats: z.int(),
  repeatLimit: z.number().nullable(),
  plausibleLeast: z.number(),
  plausibleMost: z.number(),
  /** Nobody read by it any more when the readings were closed. */
  isEnded: z.boolean(),
})

const dough = z.strictObject({
  id: z.string(),
  code: z.string(),
  /** Position of its arm; 0 is the control. */
  arm: z.int(),
  /** Number of its mixing day. */
  day: z.int(),
  plannedOrder: z.int(),
  state: z.enum(['waiting', 'weighing', 'in_work', 'baked', 'measured', 'lost', 'set_aside', 'not_baked']),
  stateWhy: z.string().nullable(),
  begunAt: z.string().nullable(),
  doneAt: z.string().nullable(),
  piecesMade: z.int().nullable(),
  piecesGood: z.int().nullable(),
  /** Entries that came too late for their place and were not settled. */
  keptAside: z.int(),
})

const reading = z.strictObject({
  id: z.string(),
  dough: z.string(),
  measure: z.string(),
  piece: z.int().nullable(),
  factorLevel: z.string().nullable(),
  repeat: z.int(),
  /** In the measure's unit. */
  value: z.number(),
  /** As it was typed, in the unit that it was typed in. */
  valueEntered: z.string(),
  unitEntered: z.string(),
  by: z.strictObject({ id: z.string(), name: z.string() }),
  takenAt: z.string(),
  receivedAt: z.string(),
  /** The reading that this one corrects, and why. */
  supersedes: z.string().nullable(),
  reason: z.string().nullable(),
  plausibleLeast: z.number().nullable(),
  plausibleMost: z.number().nullable(),
})

/**
 * What was declared, baked and read of a trial, as it stood when its readings were closed. Numbers in full, times in UTC,
 * doughs in their drawn order, readings by their ids. The result of the trial rests on this and on nothing else.
 */
export const closingOfFormat1 = z.strictObject({
  format: z.literal(1),
  bakery: z.string(),
  trial: z.strictObject({
    id: z.string(),
    number: z.int(),
    /** Hash of the plan that was approved. */
    planHash: z.string().nullable(),
  }),
  closed: z.strictObject({
    at: z.string(),
    state: z.enum(['closed', 'stopped']),
    why: z.string().nullable(),
    by: z.strictObject({ id: z.string(), name: z.string() }),
  }),
  declared: z.strictObject({
    kind: z.enum(['gain', 'no_worse', 'same_as', 'which_dose', 'look_only']),
    measure: z.strictObject({
      id: z.string(),
      code: z.string().nullable(),
      name: z.string(),
      unit: z.string(),
      digits: z.int(),
      level: z.enum(['batch', 'piece']),
      direction: z.enum(['larger', 'smaller', 'none']),
    }),
    margin: z.number(),
    marginUnit: z.enum(['pct', 'unit']),
    confidencePct: z.number(),
    mixingDays: z.int(),
    batchesPerArm: z.int(),
    piecesPerBatch: z.int(),
    factor: z.strictObject({ name: z.string(), levels: z.array(z.string()) }).nullable(),
    arms: z.array(z.strictObject({ position: z.int(), name: z.string(), plannedWaterG: z.number().nullable() })),
  }),
  measures: z.array(measure),
  doughs: z.array(dough),
  readings: z.array(reading),
})

export type ClosingOfFormat1 = z.output<typeof closingOfFormat1>

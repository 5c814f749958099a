import { z } from 'zod'

/** What was entered of one step of a dough. */
export const stepOfFormat1 = z.strictObject({
  /** How long before it was entered it had been, as somebody said, s. */
  agoS: z.number(),
  batch: z.string(),
  /** What else was in the oven. */
  beside: z.string().nullable(),
  chamberTempC: z.number().nullable(),
  /** By how much the book's clock was ahead of the device's, as the device knew it; null where it did not. */
  clockAheadS: z.number().nullable(),
  format: z.literal(1),
  /** False where a step that was entered had not been done. */
  isDone: z.boolean(),
  /** Deck and place in the oven. */
  place: z.string().nullable(),
  readTempC: z.number().nullable(),
  /** Why the one before it was wrong. */
  reason: z.string().nullable(),
  setTempC: z.number().nullable(),
  /** Of the moulder. */
  setting: z.string().nullable(),
  steam: z.boolean().nullable(),
  step: z.enum([
    'mixing_begun',
    'mixed',
    'folded',
    'scaled',
    'pre_shaped',
    'moulded',
    'retarding_begun',
    'proof_begun',
    'scored',
    'in_oven',
    'out_of_oven',
    'cooled',
  ]),
  supersedes: z.string().nullable(),
  /** By the clock of the device, as it was sent. */
  takenAt: z.string(),
})

export type StepOfFormat1 = z.output<typeof stepOfFormat1>

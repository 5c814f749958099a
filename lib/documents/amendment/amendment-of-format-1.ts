import 'server-only'
import { z } from 'zod'

const dough = z.strictObject({ id: z.string(), code: z.string() })

const value = z.strictObject({
  /** In the measure's unit. */
  value: z.number(),
  /** As it was typed, in the unit that it was typed in. */
  valueEntered: z.string(),
  unitEntered: z.string(),
})

/**
 * What somebody says should stand in place of something that was closed: old out of what was closed, new, why, who and
 * when. Numbers in full, times in UTC.
 */
export const amendmentOfFormat1 = z.strictObject({
  format: z.literal(1),
  bakery: z.string(),
  trial: z.string(),
  id: z.string(),
  /** Hash of what was closed. */
  closing: z.string().regex(/^[0-9a-f]{64}$/),
  change: z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('reading'),
      dough,
      measure: z.strictObject({ id: z.string(), code: z.string().nullable(), name: z.string(), unit: z.string() }),
      piece: z.int().nullable(),
      factorLevel: z.string().nullable(),
      repeat: z.int(),
      /** The reading that was closed in this place, or elsewhere in the dough where it moves; null where none was. */
      old: z
        .strictObject({ reading: z.string(), piece: z.int().nullable(), repeat: z.int(), ...value.shape })
        .nullable(),
      new: value,
      /** By the clock of whoever took it, where it came from a device; null for one that was proposed at the desk. */
      takenAt: z.string().nullable(),
    }),
    z.strictObject({
      kind: z.literal('not-counted'),
      dough,
      /** What became of the dough, as it was closed. */
      old: z.enum(['waiting', 'weighing', 'in_work', 'baked', 'measured', 'lost', 'set_aside', 'not_baked']),
    }),
  ]),
  /** Null for a reading that a device sent late: it says of itself what it is. */
  reason: z.string().nullable(),
  by: z.strictObject({ id: z.string(), name: z.string() }),
  at: z.string(),
  /** The entry from outside that it is; null for one that was proposed at the desk. */
  entry: z.strictObject({ id: z.string(), hash: z.string() }).nullable(),
})

export type AmendmentOfFormat1 = z.output<typeof amendmentOfFormat1>

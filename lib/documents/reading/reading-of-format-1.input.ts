import { z } from 'zod'

/** What was entered of one reading: of a correction neither batch, level nor measure, which it has from the one that was wrong. */
export const readingOfFormat1 = z.strictObject({
  format: z.literal(1),
  batch: z.string().nullable(),
  factorLevel: z.string().nullable(),
  measure: z.string().nullable(),
  piece: z.int().nullable(),
  /** Why the one before it was wrong. */
  reason: z.string().nullable(),
  repeat: z.int(),
  supersedes: z.string().nullable(),
  /** By the clock of the device, as it was sent. */
  takenAt: z.string().nullable(),
  unit: z.string(),
  /** As it was typed. */
  value: z.string(),
})

export type ReadingOfFormat1 = z.output<typeof readingOfFormat1>

import { z } from 'zod'

/** How many pieces of a dough there were, and what became of them; null for what was not said. */
export const countOfFormat1 = z.strictObject({
  batch: z.string(),
  /** By how much the book's clock was ahead of the device's, as the device knew it; null where it did not. */
  clockAheadS: z.number().nullable(),
  format: z.literal(1),
  given: z.number().nullable(),
  good: z.number(),
  made: z.number(),
  sampled: z.number().nullable(),
  sold: z.number().nullable(),
  /** By the clock of the device, as it was sent. */
  takenAt: z.string(),
  wasted: z.number().nullable(),
})

export type CountOfFormat1 = z.output<typeof countOfFormat1>

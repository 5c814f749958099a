import { z } from 'zod'

/** What was entered of one check of a volume gauge with a block that was named. */
export const checkOfFormat2 = z.strictObject({
  /** The volume of the block, as it was typed or as the device knew it, in the same unit. */
  block: z.string(),
  /** By how much the book's clock was ahead of the device's, as the device knew it; null where it did not. */
  clockAheadS: z.number().nullable(),
  equipment: z.string(),
  format: z.literal(2),
  /** Of a test weight that was named all the same; null for none. */
  mass: z.string().nullable(),
  /** As it was typed. */
  shown: z.string(),
  /** By the clock of the device, as it was sent. */
  takenAt: z.string(),
  unit: z.string(),
})

export type CheckOfFormat2 = z.output<typeof checkOfFormat2>

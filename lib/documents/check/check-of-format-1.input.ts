import { z } from 'zod'

/** What was entered of one check of a scale or a thermometer. */
export const checkOfFormat1 = z.strictObject({
  /** By how much the book's clock was ahead of the device's, as the device knew it; null where it did not. */
  clockAheadS: z.number().nullable(),
  equipment: z.string(),
  format: z.literal(1),
  /** Of the test weight, as it was typed and in the same unit; null for the one that the book knows, and for ice. */
  mass: z.string().nullable(),
  /** As it was typed. */
  shown: z.string(),
  /** By the clock of the device, as it was sent. */
  takenAt: z.string(),
  unit: z.string(),
})

export type CheckOfFormat1 = z.output<typeof checkOfFormat1>

import { z } from 'zod'

/** What was entered of one line of a dough that was weighed. */
export const weighingOfFormat1 = z.strictObject({
  format: z.literal(1),
  batch: z.string(),
  how: z.enum(['ticked', 'weighed', 'left_out']),
  ingredient: z.string(),
  /** As it was typed; null where nothing was. */
  mass: z.string().nullable(),
  part: z.enum(['line', 'dose', 'premix']),
  /** Why the one before it was wrong. */
  reason: z.string().nullable(),
  stage: z.string(),
  supersedes: z.string().nullable(),
  /** By the clock of the device, as it was sent. */
  takenAt: z.string(),
  unit: z.string().nullable(),
})

export type WeighingOfFormat1 = z.output<typeof weighingOfFormat1>

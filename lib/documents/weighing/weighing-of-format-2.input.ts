import { z } from 'zod'

/** What was entered of one line of a dough that was weighed, with the lots that it was taken from. */
export const weighingOfFormat2 = z.strictObject({
  format: z.literal(2),
  batch: z.string(),
  how: z.enum(['ticked', 'weighed', 'left_out']),
  ingredient: z.string(),
  /** How much of each, as it was typed and in the unit of the whole; null where one lot gave all of it. */
  lots: z.array(z.strictObject({ lot: z.string(), mass: z.string().nullable() })).min(1),
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

export type WeighingOfFormat2 = z.output<typeof weighingOfFormat2>

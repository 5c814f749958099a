import { z } from 'zod'

/** What was entered of one line of a dough that was weighed, where a lot was said by the code on its label alone. */
export const weighingOfFormat3 = z.strictObject({
  format: z.literal(3),
  batch: z.string(),
  how: z.enum(['ticked', 'weighed', 'left_out']),
  ingredient: z.string(),
  /** How much of each, as in format 2; each by its id or by its code. */
  lots: z
    .array(z.strictObject({ code: z.string().nullable(), lot: z.string().nullable(), mass: z.string().nullable() }))
    .min(1),
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

export type WeighingOfFormat3 = z.output<typeof weighingOfFormat3>

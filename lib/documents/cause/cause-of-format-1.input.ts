import { z } from 'zod'

/** What happened to a dough, as somebody noted it. */
export const causeOfFormat1 = z.strictObject({
  format: z.literal(1),
  batch: z.string(),
  /** When it was noticed, by the clock of the device, as it was sent. */
  takenAt: z.string(),
  what: z.string(),
})

export type CauseOfFormat1 = z.output<typeof causeOfFormat1>

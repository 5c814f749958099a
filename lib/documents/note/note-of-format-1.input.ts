import { z } from 'zod'

/** What somebody wrote for whoever works here. */
export const noteOfFormat1 = z.strictObject({
  format: z.literal(1),
  /** The dough that it is of; null where it is of a whole trial, or of the shift. */
  batch: z.string().nullable(),
  /** Left for the next shift. */
  forNext: z.boolean(),
  /** By the clock of the device, as it was sent. */
  takenAt: z.string(),
  text: z.string(),
  /** The trial that it is of, where it is of no single dough. */
  trial: z.string().nullable(),
})

export type NoteOfFormat1 = z.output<typeof noteOfFormat1>

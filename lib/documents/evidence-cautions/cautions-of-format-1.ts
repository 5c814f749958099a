import 'server-only'
import { z } from 'zod'

/** The cautions of a trial, word for word as people were told them. */
export const cautionsOfFormat1 = z.strictObject({
  format: z.literal(1),
  language: z.string(),
  texts: z.array(z.string()),
})

export type CautionsOfFormat1 = z.output<typeof cautionsOfFormat1>

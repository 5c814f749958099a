import 'server-only'
import { z } from 'zod'
import { closingOfFormat1 } from './closing-of-format-1'

/** Format 1 with what the verdict was declared to be said of. */
export const closingOfFormat2 = z.strictObject({
  ...closingOfFormat1.shape,
  format: z.literal(2),
  declared: z.strictObject({
    ...closingOfFormat1.shape.declared.shape,
    holdsFor: z.enum(['any_day', 'these_days']),
  }),
})

export type ClosingOfFormat2 = z.output<typeof closingOfFormat2>

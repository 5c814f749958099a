import { z } from 'zod'
import { note } from '../text.input'

/** Yes or no to an amendment; a no says why. */
export const decideAmendmentInput = z
  .strictObject({
    amendmentId: z.uuid(),
    /** Hash of the amendment that the person had before their eyes. */
    seenHash: z.string().regex(/^[0-9a-f]{64}$/),
    accept: z.boolean(),
    note: note(300),
  })
  .refine(({ accept, note }) => accept || note !== '', { path: ['note'], params: { code: 'say-why' } })

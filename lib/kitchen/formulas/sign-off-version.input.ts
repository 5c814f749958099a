import { z } from 'zod'
import { seenRevision, typedMoment } from '../text.input'

export const signOffVersionInput = z.strictObject({
  versionId: z.uuid(),
  seenRevision,
  /** Hash of the content that the person had before their eyes. */
  seenHash: z.string().regex(/^[0-9a-f]{64}$/),
  /** From when it is in production; null for now, and for a signature that is not the last. */
  effectiveAt: typedMoment.nullable(),
})

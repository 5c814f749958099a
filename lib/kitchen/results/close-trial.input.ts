import { z } from 'zod'
import { note, seenRevision } from '../text.input'

/** `early` ends a trial with doughs still open; it needs a reason, and so does a trial of which readings are missing or odd. */
export const closeTrialInput = z.strictObject({
  trialId: z.uuid(),
  seenRevision,
  early: z.boolean(),
  reason: note(2000),
})

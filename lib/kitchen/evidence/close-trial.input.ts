import { z } from 'zod'
import { note, seenRevision } from '../text.input'

/** `early` ends a trial with doughs still open; it needs a reason. */
export const closeTrialInput = z.strictObject({ trialId: z.uuid(), seenRevision, early: z.boolean(), reason: note(2000) })

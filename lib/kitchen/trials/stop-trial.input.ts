import { z } from 'zod'
import { note, seenRevision } from '../text.input'

export const stopTrialInput = z.strictObject({ trialId: z.uuid(), seenRevision, reason: note(2000).min(1) })

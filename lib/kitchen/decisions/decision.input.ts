import { z } from 'zod'
import { note, seenRevision } from '../text.input'

/** Why it is decided so. It stays with the decision, and with the version, for good. */
export const decisionReason = note(1000).min(1)

/** On which trial, as it was seen. */
export const decidedTrial = { trialId: z.uuid(), seenRevision, reason: decisionReason }

import { z } from 'zod'
import { seenRevision } from '../text.input'
import { decisionReason } from './decision.input'

export const takeBackInput = z.strictObject({ decisionId: z.uuid(), seenRevision, reason: decisionReason })

import { z } from 'zod'
import { seenRevision } from '../text.input'

export const proposePlanInput = z.strictObject({ trialId: z.uuid(), seenRevision })

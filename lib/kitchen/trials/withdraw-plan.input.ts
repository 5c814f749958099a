import { z } from 'zod'
import { seenRevision } from '../text.input'

export const withdrawPlanInput = z.strictObject({ trialId: z.uuid(), seenRevision })

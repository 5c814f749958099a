import { z } from 'zod'
import { decidedTrial } from './decision.input'

export const draftChangeInput = z.strictObject({ ...decidedTrial, armId: z.uuid() })

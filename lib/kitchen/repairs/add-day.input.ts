import { z } from 'zod'

/** `number`: of the mixing day that is short of doughs. */
export const addDayInput = z.strictObject({ trialId: z.uuid(), number: z.int().min(1).max(60) })

import { z } from 'zod'

export const bakeAgainInput = z.strictObject({ batchId: z.uuid() })

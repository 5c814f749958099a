import { z } from 'zod'

export const goOnInput = z.strictObject({ shiftToken: z.string().min(1).max(64) })

import { z } from 'zod'

export const openDoughKeyInput = z.strictObject({ batchId: z.uuid() })

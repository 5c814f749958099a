import { z } from 'zod'

export const noteLookInput = z.strictObject({
  trialId: z.uuid(),
  what: z.enum(['key', 'result', 'evidence']),
})
export type Look = z.output<typeof noteLookInput>

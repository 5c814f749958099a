import { z } from 'zod'

export const openKeyInput = z.strictObject({
  trialId: z.uuid(),
  /** Of the plan whose key it is, as the page showed it: one that is drawn up anew has other codes. */
  planHash: z.string().regex(/^[0-9a-f]{64}$/),
})

import { z } from 'zod'
import { line } from '../text.input'

/** That the first result of a trial rested on a slip, and on which. */
export const signSlipInput = z.strictObject({
  trialId: z.uuid(),
  /** Of the accepted amendments that the person had before their eyes. */
  amendedHash: z.string().regex(/^[0-9a-f]{64}$/),
  reason: line(300),
})

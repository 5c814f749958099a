import { z } from 'zod'
import { line } from '../text.input'

/** That a dough of a closed trial should not count, and why. */
export const proposeNotCountingInput = z.strictObject({
  trialId: z.uuid(),
  doughId: z.uuid(),
  reason: line(300),
})

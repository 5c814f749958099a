import { z } from 'zod'
import { note, seenRevision } from '../text.input'

export const decidePlanInput = z
  .strictObject({
    trialId: z.uuid(),
    seenRevision,
    /** Hash of the plan that the person had before their eyes. */
    planHash: z.string().regex(/^[0-9a-f]{64}$/),
    verdict: z.enum(['approved', 'sent_back', 'declined']),
    note: note(2000),
  })
  .refine((decision) => decision.verdict === 'approved' || decision.note !== '', {
    path: ['note'],
    params: { code: 'say-why' },
  })

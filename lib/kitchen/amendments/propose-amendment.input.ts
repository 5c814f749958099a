import { z } from 'zod'
import { line } from '../text.input'

/** What a reading of a closed trial should have been. What was closed in its place is not sent: the book knows it. */
export const proposeAmendmentInput = z.strictObject({
  trialId: z.uuid(),
  /** Another value for a reading that was closed, or one that was missing. */
  what: z.enum(['another', 'missing']),
  doughId: z.uuid(),
  measureId: z.uuid(),
  piece: z.int().min(1).max(10_000).nullable(),
  repeat: z.int().min(1).max(20),
  /** In the measure's unit. */
  value: line(40),
  reason: line(300),
})

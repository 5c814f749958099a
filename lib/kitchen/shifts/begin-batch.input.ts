import { z } from 'zod'
import { line, seenRevision } from '../text.input'

export const beginBatchInput = z.strictObject({
  batchId: z.uuid(),
  seenRevision,
  /** Bench, bowl and tools were cleaned down, where that is needed before this batch. */
  cleanDownDone: z.boolean(),
  /** Why it comes before batches that the plan puts first. */
  swapWhy: line(300).optional(),
})

import { z } from 'zod'
import { outState } from '../conduct/out-state.input'
import { line, seenRevision } from '../text.input'

const which = { batchId: z.uuid(), seenRevision }

export const moveBatchInput = z.discriminatedUnion('to', [
  z.strictObject({ ...which, to: z.enum(['in_work', 'baked']) }),
  /** `why` is needed when something is missing, unsettled or odd. */
  z.strictObject({ ...which, to: z.literal('measured'), why: line(300).optional() }),
  z.strictObject({ ...which, to: outState, why: line(300) }),
])

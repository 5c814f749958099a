import { z } from 'zod'
import { line } from '../text.input'

const turn = z.int().min(1).max(10_000)

/** Two doughs with the places in their day that they were seen at. */
export const swapDoughsInput = z.strictObject({
  batchId: z.uuid(),
  seenTurn: turn,
  otherId: z.uuid(),
  why: line(300),
})

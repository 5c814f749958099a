import { z } from 'zod'
import { line } from '../text.input'

/** What happened to a batch. `noticedMinAgo`: how long ago somebody noticed, min; a day at most. */
export const noteCauseInput = z.strictObject({
  batchId: z.uuid(),
  what: line(300),
  noticedMinAgo: z.int().min(0).max(1440),
})

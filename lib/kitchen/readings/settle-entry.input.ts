import { z } from 'zod'
import { line } from '../text.input'

/** What becomes of an entry that is kept aside. */
export const settleEntryInput = z.strictObject({
  entryId: z.uuid(),
  /** Of its content: two entries may be aside under one id. */
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  /** True: into the book, in the place of what is there; false: it stays aside, and nothing waits for it any more. */
  take: z.boolean(),
  /** The reading that stood there when somebody looked; null where none did. Another one is not pushed out unseen. */
  seenReadingId: z.uuid().nullable(),
  reason: line(300),
})

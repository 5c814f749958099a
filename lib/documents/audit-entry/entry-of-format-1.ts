import 'server-only'
import { z } from 'zod'

/** One entry of a bakery's record. */
export const entryOfFormat1 = z.strictObject({
  format: z.literal(1),
  bakery: z.string(),
  /** Place in the chain, from 1, in decimal digits. */
  number: z.string().regex(/^[1-9][0-9]*$/),
  at: z.string(),
  /** Null where nobody was signed in. */
  who: z.strictObject({ person: z.string(), name: z.string(), role: z.string() }).nullable(),
  address: z.string(),
  /** Name of the command, or of what was refused. */
  action: z.string(),
  target: z.string().nullable(),
  /** What the action says of itself: each has its own, so any plain value. */
  before: z.json(),
  after: z.json(),
  reason: z.string().nullable(),
  /** Hash of the entry before it; of the first one, zeros. */
  previous: z.string().regex(/^[0-9a-f]{64}$/),
})

export type EntryOfFormat1 = z.output<typeof entryOfFormat1>

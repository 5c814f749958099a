import 'server-only'
import { z } from 'zod'

const person = z.strictObject({ person: z.string(), name: z.string(), role: z.string() })

/** One entry of a bakery's record, which says how whoever did it was let in. */
export const entryOfFormat2 = z.strictObject({
  format: z.literal(2),
  bakery: z.string(),
  /** Place in the chain, from 1, in decimal digits. */
  number: z.string().regex(/^[1-9][0-9]*$/),
  at: z.string(),
  /** Null where nobody was let in yet. */
  who: z
    .discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('desk'), ...person.shape }),
      /** A shared tablet, or what else has a place of its own, with the person whose shift it holds, or nobody. */
      z.strictObject({ kind: z.literal('station'), station: z.string(), name: z.string(), person: person.nullable() }),
      /** A guest of a panel, under their code there. */
      z.strictObject({ kind: z.literal('taster'), panel: z.string(), code: z.string() }),
      /** A work of the install itself. */
      z.strictObject({ kind: z.literal('job'), job: z.string() }),
    ])
    .nullable(),
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

export type EntryOfFormat2 = z.output<typeof entryOfFormat2>

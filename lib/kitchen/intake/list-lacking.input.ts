import { z } from 'zod'

/** Most entries that are asked for at once. */
export const mostAsked = 500

/** Entries that somebody holds to be in the book, each with the hash that it was answered with, and as what. */
export const listLackingInput = z.strictObject({
  entries: z
    .array(
      z.strictObject({
        id: z.uuid(),
        hash: z.string().regex(/^[0-9a-f]{64}$/),
        /** Left out by builds that did not say; then either will do. */
        outcome: z.enum(['kept', 'aside']).optional(),
      }),
    )
    .min(1)
    .max(mostAsked),
})

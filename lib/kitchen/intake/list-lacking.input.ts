import { z } from 'zod'

/** Most entries that are asked for at once. */
export const mostAsked = 500

/** Entries that somebody holds to be in the book, each with the hash that it was answered with. */
export const listLackingInput = z.strictObject({
  entries: z
    .array(z.strictObject({ id: z.uuid(), hash: z.string().regex(/^[0-9a-f]{64}$/) }))
    .min(1)
    .max(mostAsked),
})

import { z } from 'zod'

/** Most entries that one request may bring. */
export const mostEntries = 100

/** The frame of a request; each entry is read by the handler of its kind, and refused by itself. */
export const sendEntriesInput = z.strictObject({ entries: z.array(z.looseObject({})).min(1).max(mostEntries) })

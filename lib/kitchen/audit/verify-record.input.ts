import { z } from 'zod'

/** What a print said of the record: its entry's number, and how the hash of that begins. */
const anchor = z.strictObject({
  number: z.coerce.number().pipe(z.int().min(1)),
  hash: z
    .string()
    .max(100)
    // As it was typed from paper: in groups, perhaps in capitals.
    .transform((typed) => typed.replace(/\s/g, '').toLowerCase())
    .pipe(z.string().regex(/^[0-9a-f]{12,64}$/)),
})

export const verifyRecordInput = z.strictObject({ anchor: anchor.optional() })

import 'server-only'
import { z } from 'zod'

const hash = z.string().regex(/^[0-9a-f]{64}$/)
const kept = z.strictObject({ text: z.string(), hash })

/**
 * Evidence as a file that can be checked without the book it comes from: the text that names the parts, the parts, the
 * content that was signed on it, and the entries of the record that are concerned, with those before and after them. A
 * text that somebody may not see is null, and its hash stays.
 */
export const fileOfFormat1 = z.strictObject({
  format: z.literal(1),
  manifest: kept,
  parts: z.array(z.strictObject({ kind: z.string(), version: z.int().min(1), hash, text: z.string().nullable() })),
  signed: kept.nullable(),
  record: z.array(
    z.strictObject({
      /** Place in the chain, from 1. */
      number: z.int().min(1),
      hash,
      text: z.string().nullable(),
    }),
  ),
})

export type FileOfFormat1 = z.output<typeof fileOfFormat1>

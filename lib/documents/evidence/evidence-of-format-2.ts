import 'server-only'
import { z } from 'zod'
import { frozen } from './figures'

const hash = z.string().regex(/^[0-9a-f]{64}$/)

/**
 * What evidence consists of: parts, each with its kind, the version of that kind, and the hash of its text. A part can
 * be left out for somebody, and the rest still is what was hashed; a later kind of part needs no new format.
 */
export const evidenceOfFormat2 = z.strictObject({
  format: z.literal(2),
  bakery: z.string(),
  trial: z.strictObject({ id: z.string(), number: z.int() }),
  frozen,
  parts: z
    .array(z.strictObject({ kind: z.string(), version: z.int().min(1), hash }))
    .refine((parts) => new Set(parts.map(({ kind }) => kind)).size === parts.length),
})

export type EvidenceOfFormat2 = z.output<typeof evidenceOfFormat2>

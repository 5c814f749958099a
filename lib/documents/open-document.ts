import 'server-only'
import { z } from 'zod'

/** Why a kept text cannot be read. */
export type Unread =
  /** It is whole as far as can be told, in a format that came after this code. */
  | { outcome: 'unknown-format'; format: number }
  /** It is not the text that was hashed, or not what its format says. */
  | { outcome: 'damaged' }

const anyDocument = z.looseObject({ format: z.int().min(1) })

/** A kept text as JSON, with the number of its format; null when it is no document at all. */
export function openDocument(text: string): { format: number; value: unknown } | null {
  const value = jsonOrNull(text)
  const read = anyDocument.safeParse(value)
  return read.success ? { format: read.data.format, value } : null
}

function jsonOrNull(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    // Not JSON is no document, and that is all there is to say.
    return null
  }
}

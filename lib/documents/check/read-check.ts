import 'server-only'
import type { z } from 'zod'
import { hashOfText } from '../hash-of-text'
import { openDocument, type Unread } from '../open-document'
import { checkOfFormat1 } from './check-of-format-1.input'
import { checkOfFormat2 } from './check-of-format-2.input'
import type { CheckContent } from './text-of-check.input'

export type CheckRead = { outcome: 'read'; format: number; value: CheckContent } | Unread

const formats: Readonly<Record<number, z.ZodType<CheckContent & { format: number }>>> = {
  1: checkOfFormat1,
  2: checkOfFormat2,
}

/** Reads the text of a check. */
export function readCheck(text: string, hash: string): CheckRead {
  const opened = hashOfText(text) === hash ? openDocument(text) : null
  if (!opened) return { outcome: 'damaged' }
  const { format, value } = opened
  const schema = formats[format]
  if (!schema) return { outcome: 'unknown-format', format }
  const read = schema.safeParse(value).data
  if (!read) return { outcome: 'damaged' }
  const { format: _, ...check } = read
  return { outcome: 'read', format, value: check }
}

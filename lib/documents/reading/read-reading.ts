import 'server-only'
import { hashOfText } from '../hash-of-text'
import { openDocument, type Unread } from '../open-document'
import { readingOfFormat1 } from './reading-of-format-1.input'
import type { ReadingContent } from './text-of-reading.input'

export type ReadingRead = { outcome: 'read'; format: number; reading: ReadingContent } | Unread

/** Reads the text of what was entered of a reading. */
export function readReading(text: string, hash: string): ReadingRead {
  const opened = hashOfText(text) === hash ? openDocument(text) : null
  if (!opened) return { outcome: 'damaged' }
  const { format, value } = opened
  if (format !== 1) return { outcome: 'unknown-format', format }
  const read = readingOfFormat1.safeParse(value).data
  if (!read) return { outcome: 'damaged' }
  const { format: _, ...reading } = read
  return { outcome: 'read', format, reading }
}

import 'server-only'
import { hashOfText } from '../hash-of-text'
import { openDocument, type Unread } from '../open-document'
import { closingOfFormat1 } from './closing-of-format-1'
import type { Closing } from './text-of-closing'

export type ClosingRead = { outcome: 'read'; format: number; closing: Closing } | Unread

/** Reads what was closed. Of a damaged one nothing may be concluded. */
export function readClosing(text: string, hash: string): ClosingRead {
  if (hashOfText(text) !== hash) return { outcome: 'damaged' }
  const opened = openDocument(text)
  if (!opened) return { outcome: 'damaged' }
  const { format, value } = opened
  if (format !== 1) return { outcome: 'unknown-format', format }
  const read = closingOfFormat1.safeParse(value).data
  if (!read) return { outcome: 'damaged' }
  const { format: _, ...closing } = read
  return { outcome: 'read', format, closing }
}

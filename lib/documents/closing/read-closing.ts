import 'server-only'
import { hashOfText } from '../hash-of-text'
import { openDocument, type Unread } from '../open-document'
import { asFormat2 } from './as-format-2'
import type { Closing } from './closing'
import { closingOfFormat1 } from './closing-of-format-1'
import { closingOfFormat2 } from './closing-of-format-2'

export type ClosingRead = { outcome: 'read'; format: number; closing: Closing } | Unread

/** Reads what was closed. Of a damaged one nothing may be concluded. */
export function readClosing(text: string, hash: string): ClosingRead {
  if (hashOfText(text) !== hash) return { outcome: 'damaged' }
  const opened = openDocument(text)
  if (!opened) return { outcome: 'damaged' }
  const { format, value } = opened
  switch (format) {
    case 1: {
      const read = closingOfFormat1.safeParse(value).data
      return read ? { outcome: 'read', format, closing: asFormat2(read) } : { outcome: 'damaged' }
    }
    case 2: {
      const read = closingOfFormat2.safeParse(value).data
      if (!read) return { outcome: 'damaged' }
      const { format: _, ...closing } = read
      return { outcome: 'read', format, closing }
    }
    default:
      return { outcome: 'unknown-format', format }
  }
}

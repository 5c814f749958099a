import 'server-only'
import { hashOfText } from '../hash-of-text'
import { openDocument, type Unread } from '../open-document'
import { amendmentOfFormat1 } from './amendment-of-format-1'
import type { AmendmentContent } from './text-of-amendment'

export type AmendmentRead = { outcome: 'read'; format: number; amendment: AmendmentContent } | Unread

/** Reads what was proposed. Of a damaged one nothing may be concluded. */
export function readAmendment(text: string, hash: string): AmendmentRead {
  const opened = hashOfText(text) === hash ? openDocument(text) : null
  if (!opened) return { outcome: 'damaged' }
  const { format, value } = opened
  if (format !== 1) return { outcome: 'unknown-format', format }
  const read = amendmentOfFormat1.safeParse(value).data
  if (!read) return { outcome: 'damaged' }
  const { format: _, ...amendment } = read
  return { outcome: 'read', format, amendment }
}

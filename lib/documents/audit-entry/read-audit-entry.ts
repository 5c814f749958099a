import 'server-only'
import { openDocument, type Unread } from '../open-document'
import { entryOfFormat1 } from './entry-of-format-1'
import type { AuditEntryContent } from './text-of-audit-entry'

export type AuditEntryRead = { outcome: 'read'; format: number; entry: AuditEntryContent } | Unread

/** Reads an entry of the record. Whether its hash fits, and what came before, is for whoever follows the chain. */
export function readAuditEntry(text: string): AuditEntryRead {
  const opened = openDocument(text)
  if (!opened) return { outcome: 'damaged' }
  const { format, value } = opened
  if (format !== 1) return { outcome: 'unknown-format', format }
  const read = entryOfFormat1.safeParse(value).data
  if (!read) return { outcome: 'damaged' }
  const { format: _, ...entry } = read
  return { outcome: 'read', format, entry }
}

import 'server-only'
import { openDocument, type Unread } from '../open-document'
import { asFormat2 } from './as-format-2'
import { entryOfFormat1 } from './entry-of-format-1'
import { entryOfFormat2, type EntryOfFormat2 } from './entry-of-format-2'
import type { AuditEntryContent } from './text-of-audit-entry'

export type AuditEntryRead = { outcome: 'read'; format: number; entry: AuditEntryContent } | Unread

/**
 * Reads an entry of the record, in this format or the former one. Whether its hash fits, and what came before, is for
 * whoever follows the chain.
 */
export function readAuditEntry(text: string): AuditEntryRead {
  const opened = openDocument(text)
  if (!opened) return { outcome: 'damaged' }
  const { format, value } = opened
  switch (format) {
    case 1: {
      const entry = entryOfFormat1.safeParse(value).data
      return found(format, entry && asFormat2(entry))
    }
    case 2:
      return found(format, entryOfFormat2.safeParse(value).data)
    default:
      return { outcome: 'unknown-format', format }
  }
}

function found(format: number, read: EntryOfFormat2 | undefined): AuditEntryRead {
  if (!read) return { outcome: 'damaged' }
  const { format: _, ...entry } = read
  return { outcome: 'read', format, entry }
}

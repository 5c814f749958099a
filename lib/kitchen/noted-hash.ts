import 'server-only'
import { z } from 'zod'
import { readAuditEntry } from '../documents/audit-entry/read-audit-entry'
import { hashOfText } from '../documents/hash-of-text'

/** By whose entry in the record each kind of frozen text was kept. */
export const notedBy = {
  evidence: ['decisions.draft-change', 'decisions.keep-formula'],
  closing: ['results.close-trial'],
} as const

export type NotedKind = keyof typeof notedBy

/** The hash of a frozen text that an entry of the record says, under the name of its kind; null where it says none. */
export function notedHash(entryText: string, hash: string, kind: NotedKind): string | null {
  if (hashOfText(entryText) !== hash) return null
  const read = readAuditEntry(entryText)
  if (read.outcome !== 'read') return null
  const by: readonly string[] = notedBy[kind]
  if (!by.includes(read.entry.action)) return null
  return z.looseObject({ [kind]: z.string() }).safeParse(read.entry.after).data?.[kind] ?? null
}

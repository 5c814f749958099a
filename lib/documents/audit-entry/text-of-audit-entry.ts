import 'server-only'
import { canonicalText } from '../canonical-text'
import { hashOfText } from '../hash-of-text'
import { entryOfFormat2, type EntryOfFormat2 } from './entry-of-format-2'

/** What an entry of the record says, whatever the format of its text. */
export type AuditEntryContent = Omit<EntryOfFormat2, 'format'>

/**
 * An entry in its one text, which holds the hash of the entry before it, and the hash of that.
 * @throws ZodError for anything that could not be read back
 */
export function textOfAuditEntry(entry: AuditEntryContent): { text: string; hash: string } {
  const text = canonicalText(entryOfFormat2.parse({ format: 2, ...entry }))
  return { text, hash: hashOfText(text) }
}

import 'server-only'
import { randomBytes } from 'node:crypto'
import { textOfAuditEntry, type AuditEntryContent } from './text-of-audit-entry'

/**
 * The text of an entry around its place in the chain, for who writes it before that is known: between the two parts
 * belongs `"number":"…","previous":"…"`, the entry's number and the hash before it.
 * @throws ZodError for anything that could not be read back
 */
export function textAroundPlace(entry: Omit<AuditEntryContent, 'number' | 'previous'>): {
  before: string
  after: string
} {
  // Drawn anew, so that nothing that somebody typed can be it.
  const previous = randomBytes(32).toString('hex')
  const { text } = textOfAuditEntry({ ...entry, number: '1', previous })
  const [before, after, ...more] = text.split(`"number":"1","previous":"${previous}"`)
  if (before === undefined || after === undefined || more.length > 0)
    throw new Error('the text of an entry does not hold its place once')
  return { before, after }
}

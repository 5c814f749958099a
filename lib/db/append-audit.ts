import 'server-only'
import { createHash } from 'node:crypto'
import canonicalize from 'canonicalize'
import type { Tx } from './client'

/** A small plain value, as it stands in the record. */
export type AuditValue = string | number | boolean | null | AuditValue[] | { [key: string]: AuditValue }

export type AuditNote = {
  /** Name of the command, or of what was refused. */
  action: string
  target?: string
  before?: AuditValue
  after?: AuditValue
  reason?: string
}

export type AuditWho = { personId: string; name: string; role: string } | null

/** Hash that stands before a bakery's first entry. */
export const chainStart = '0'.repeat(64)

/** Number of the form in which an entry's text is written; a change of form gets a new one. */
const entryFormat = 1

/**
 * Adds one entry to a bakery's chain. Call it last: it locks the head of the chain, and whoever comes next waits.
 * @param onceHeld looked at when the lock is there: nothing waits after it, so what it reads holds until the commit
 * @throws Error when the bakery has no chain; whatever `onceHeld` throws
 */
export async function appendAudit(tx: Tx, bakeryId: string, at: Date, who: AuditWho, address: string, note: AuditNote, onceHeld?: () => Promise<void>): Promise<void> {
  const [head] = await tx.$queryRaw<{ number: bigint; hash: string }[]>`
    SELECT number, hash FROM audit_head WHERE bakery_id = ${bakeryId}::uuid FOR UPDATE`
  if (!head) throw new Error(`bakery ${bakeryId} has no audit chain`)
  await onceHeld?.()
  const number = head.number + 1n
  const entryText = canonicalText({
    format: entryFormat,
    bakery: bakeryId,
    number: number.toString(),
    at: at.toISOString(),
    who: who && { person: who.personId, name: who.name, role: who.role },
    address,
    action: note.action,
    target: note.target ?? null,
    before: note.before ?? null,
    after: note.after ?? null,
    reason: note.reason ?? null,
    previous: head.hash,
  })
  const hash = hashOfEntry(entryText)
  // One statement, because everybody else of the bakery waits for it.
  await tx.$executeRaw`
    WITH entry AS (
      INSERT INTO audit_entry (bakery_id, number, at, person_id, action, target_id, entry_text, previous_hash, hash)
      VALUES (${bakeryId}::uuid, ${number}, ${at}, ${who?.personId ?? null}::uuid, ${note.action}, ${note.target ?? null}::uuid, ${entryText}, ${head.hash}, ${hash})
    )
    UPDATE audit_head SET number = ${number}, hash = ${hash} WHERE bakery_id = ${bakeryId}::uuid`
}

/** Starts the chain of a new bakery. */
export async function startAuditChain(tx: Tx, bakeryId: string): Promise<void> {
  await tx.auditHead.create({ data: { bakeryId, number: 0n, hash: chainStart } })
}

/** SHA-256 of an entry's text, which holds the hash of the entry before it. */
export function hashOfEntry(entryText: string): string {
  return createHash('sha256').update(entryText, 'utf8').digest('hex')
}

/** JSON in the one form of RFC 8785, so that the same content has the same hash everywhere. */
export function canonicalText(value: AuditValue): string {
  const text = canonicalize(value)
  if (text === undefined) throw new Error('not JSON')
  return text
}

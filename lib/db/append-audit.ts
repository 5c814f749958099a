import 'server-only'
import { textOfAuditEntry, type AuditEntryContent } from '../documents/audit-entry/text-of-audit-entry'
import type { Json } from '../documents/canonical-text'
import { bookChannel } from './book-channel'
import type { Tx } from './client'

export type AuditNote = {
  /** Name of the command, or of what was refused. */
  action: string
  target?: string
  before?: Json
  after?: Json
  reason?: string
}

type Person = { personId: string; name: string; role: string }

/** Who is behind an entry; null where nobody was let in yet. */
export type AuditWho =
  | ({ kind: 'desk' } & Person)
  | ({ kind: 'station'; stationId: string; stationName: string } & (Person | { personId: null }))
  | { kind: 'taster'; panelId: string; code: string }
  | { kind: 'job'; job: string }
  | null

/** Hash that stands before a bakery's first entry. */
export const chainStart = '0'.repeat(64)

/**
 * Adds one entry to a bakery's chain, and has whoever listens told of it: at the commit, once for equal ones, and not
 * at all where nothing is kept. Call it last: it locks the head of the chain, and whoever comes next waits.
 * @param onceHeld looked at when the lock is there: nothing waits after it, so what it reads holds until the commit
 * @throws Error when the bakery has no chain; whatever `onceHeld` throws
 */
export async function appendAudit(
  tx: Tx,
  bakeryId: string,
  at: Date,
  who: AuditWho,
  address: string,
  note: AuditNote,
  onceHeld?: () => Promise<void>,
): Promise<void> {
  const [head] = await tx.$queryRaw<{ number: bigint; hash: string }[]>`
    SELECT number, hash FROM audit_head WHERE bakery_id = ${bakeryId}::uuid FOR UPDATE`
  if (!head) throw new Error(`bakery ${bakeryId} has no audit chain`)
  await onceHeld?.()
  const number = head.number + 1n
  const { text, hash } = textOfAuditEntry({
    bakery: bakeryId,
    number: number.toString(),
    at: at.toISOString(),
    who: who && sayWho(who),
    address,
    action: note.action,
    target: note.target ?? null,
    before: note.before ?? null,
    after: note.after ?? null,
    reason: note.reason ?? null,
    previous: head.hash,
  })
  // One statement, because everybody else of the bakery waits for it.
  await tx.$executeRaw`
    WITH entry AS (
      INSERT INTO audit_entry (bakery_id, number, at, by, person_id, action, target_id, entry_text, previous_hash, hash)
      VALUES (${bakeryId}::uuid, ${number}, ${at}, ${who?.kind ?? null}::caller_kind, ${personBehind(who)}::uuid, ${note.action}, ${note.target ?? null}::uuid, ${text}, ${head.hash}, ${hash})
    )
    UPDATE audit_head SET number = ${number}, hash = ${hash} WHERE bakery_id = ${bakeryId}::uuid
    RETURNING pg_notify(${bookChannel}, ${bakeryId})`
}

function sayWho(who: NonNullable<AuditWho>): AuditEntryContent['who'] {
  switch (who.kind) {
    case 'desk':
      return { kind: 'desk', ...sayPerson(who) }
    case 'station':
      return {
        kind: 'station',
        station: who.stationId,
        name: who.stationName,
        person: who.personId === null ? null : sayPerson(who),
      }
    case 'taster':
      return { kind: 'taster', panel: who.panelId, code: who.code }
    case 'job':
      return { kind: 'job', job: who.job }
    default:
      throw new Error(`the record has no words for ${JSON.stringify(who satisfies never)}`)
  }
}

function sayPerson({ personId, name, role }: Person) {
  return { person: personId, name, role }
}

function personBehind(who: AuditWho): string | null {
  return who && (who.kind === 'desk' || who.kind === 'station') ? who.personId : null
}

/** Starts the chain of a new bakery. */
export async function startAuditChain(tx: Tx, bakeryId: string): Promise<void> {
  await tx.auditHead.create({ data: { bakeryId, number: 0n, hash: chainStart } })
}

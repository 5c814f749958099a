import 'server-only'
import { textAroundPlace } from '../documents/audit-entry/text-around-place'
import type { AuditEntryContent } from '../documents/audit-entry/text-of-audit-entry'
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

/** What must still be true of who keeps something: `is_still_there` in the database knows how to tell. */
export type Still =
  | { kind: 'desk'; sessionId: string; personId: string; role: string }
  | { kind: 'station'; stationId: string; personId: null }
  | { kind: 'station'; stationId: string; shiftId: string; personId: string; role: string }
  | { kind: 'job' | 'nobody' }

/**
 * Adds one entry to a bakery's chain, and has whoever listens told of it: at the commit, once for equal ones, and not
 * at all where nothing is kept. Call it last: it locks the head of the chain, and whoever comes next waits.
 * @param still looked at when the lock is there: nothing waits after it, so what it finds holds until the commit
 * @returns whether it was added; it was not where somebody is not there any more, and then nothing may be kept
 * @throws Error when the bakery has no chain
 */
export async function appendAudit(
  tx: Tx,
  bakeryId: string,
  at: Date,
  who: AuditWho,
  address: string,
  note: AuditNote,
  still?: Still,
): Promise<boolean> {
  const { before, after } = textAroundPlace({
    bakery: bakeryId,
    at: at.toISOString(),
    who: who && sayWho(who),
    address,
    action: note.action,
    target: note.target ?? null,
    before: note.before ?? null,
    after: note.after ?? null,
    reason: note.reason ?? null,
  })
  // One statement, because everybody else of the bakery waits for it.
  const [row] = await tx.$queryRaw<{ outcome: 'added' | 'gone' | 'no-record' }[]>`
    SELECT append_audit(${bakeryId}::uuid, ${at}::timestamptz, ${who?.kind ?? null}::caller_kind, ${personBehind(who)}::uuid, ${note.action},
      ${note.target ?? null}::uuid, ${before}, ${after}, ${still ? JSON.stringify(still) : null}::jsonb, ${bookChannel}) AS outcome`
  if (row?.outcome !== 'added' && row?.outcome !== 'gone') throw new Error(`bakery ${bakeryId} has no audit chain`)
  return row.outcome === 'added'
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

import 'server-only'
import type { Db, Tx } from '../db/client'
import type { Actor, DeskActor, JobActor } from './actor'
import type { Credential, DeskCredential, JobCredential } from './credential'
import { findAtStation } from './find-at-station'
import { hashSecret } from './secret'
import { latestMoment, sessionIdleMs } from './session-life'

/**
 * Finds who holds a credential. Nothing but that is taken from the caller: bakery, role and whether the person still
 * works here come from the rows, each time.
 * @returns nobody when the credential is unknown, ended or over, and for a kind that is not known (yet): tasters
 * have nothing to be looked up in
 */
export async function findActor(from: Db | Tx, credential: Credential, now: Date): Promise<Actor | null> {
  switch (credential.kind) {
    case 'desk':
      return findAtDesk(from, credential, now)
    case 'job':
      return findJob(from, credential)
    case 'station':
      return findAtStation(from, credential, now)
    case 'taster':
      return null
    default:
      credential satisfies never
      return null
  }
}

/** @returns nobody when the session is unknown, ended, idle too long or over, used in the future, or the person was switched off */
async function findAtDesk(from: Db | Tx, { sessionSecret }: DeskCredential, now: Date): Promise<DeskActor | null> {
  if (!sessionSecret) return null
  const [row] = await from.$queryRaw<(Omit<DeskActor, 'kind'> & { endsAt: Date })[]>`
    SELECT session.bakery_id AS "bakeryId", session.id AS "sessionId", session.last_seen_at AS "sessionSeenAt", session.ends_at AS "endsAt",
      person.id AS "personId", person.name, person.email, person.role::text, coalesce(person.language, bakery.language)::text AS language
    FROM sign_in_pointer AS pointer
    JOIN session ON session.bakery_id = pointer.bakery_id AND session.id = pointer.target_id
    JOIN person ON person.bakery_id = session.bakery_id AND person.id = session.person_id
    JOIN bakery ON bakery.bakery_id = session.bakery_id
    WHERE pointer.hash = ${hashSecret('session', sessionSecret)} AND pointer.kind = 'session'
      AND session.ended_at IS NULL AND person.ended_at IS NULL`
  if (!row) return null
  const { endsAt, ...actor } = row
  if (now >= endsAt || now.getTime() - actor.sessionSeenAt.getTime() >= sessionIdleMs) return null
  // Opened while the clock was wrong, it would neither idle nor end for as long as the clock was ahead.
  if (actor.sessionSeenAt > latestMoment()) return null
  return { kind: 'desk', ...actor }
}

async function findJob(from: Db | Tx, { job, bakeryId }: JobCredential): Promise<JobActor | null> {
  const bakery = await from.bakery.findUnique({ where: { bakeryId }, select: { language: true } })
  return bakery && { kind: 'job', job, bakeryId, language: bakery.language }
}

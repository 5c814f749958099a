import 'server-only'
import type { Role } from '../db/generated/enums'
import type { Db, Tx } from '../db/client'
import { hashSecret } from './secret'
import { latestMoment, sessionIdleMs } from './session-life'

/** The person who acts, as the database knows them at this moment. */
export type Actor = {
  bakeryId: string
  personId: string
  name: string
  email: string
  role: Role
  sessionId: string
  /** When the session's last use was noted. */
  sessionSeenAt: Date
  where: 'desk'
}

type ActorRow = Omit<Actor, 'where'> & { endsAt: Date }

/**
 * Finds who holds a session secret. Nothing but the secret is taken from the caller: bakery, role and whether the
 * person still works here come from the rows, each time.
 * @returns nobody when the session is unknown, ended, idle too long or over, used in the future, or the person was switched off
 */
export async function findActor(from: Db | Tx, sessionSecret: string | null, now: Date): Promise<Actor | null> {
  if (!sessionSecret) return null
  const [row] = await from.$queryRaw<ActorRow[]>`
    SELECT session.bakery_id AS "bakeryId", session.id AS "sessionId", session.last_seen_at AS "sessionSeenAt", session.ends_at AS "endsAt",
      person.id AS "personId", person.name, person.email, person.role::text
    FROM sign_in_pointer AS pointer
    JOIN session ON session.bakery_id = pointer.bakery_id AND session.id = pointer.target_id
    JOIN person ON person.bakery_id = session.bakery_id AND person.id = session.person_id
    WHERE pointer.hash = ${hashSecret('session', sessionSecret)} AND pointer.kind = 'session'
      AND session.ended_at IS NULL AND person.ended_at IS NULL`
  if (!row) return null
  const { endsAt, ...actor } = row
  if (now >= endsAt || now.getTime() - actor.sessionSeenAt.getTime() >= sessionIdleMs) return null
  // Opened while the clock was wrong, it would neither idle nor end for as long as the clock was ahead.
  if (actor.sessionSeenAt > latestMoment()) return null
  return { ...actor, where: 'desk' }
}

/**
 * Whether somebody who was found is still who they were: the session open, the person here and of the same role.
 * One statement, for where others wait.
 */
export async function isStillActor(tx: Tx, actor: Actor, now: Date): Promise<boolean> {
  const rows = await tx.$queryRaw<unknown[]>`
    SELECT 1 FROM session JOIN person ON person.bakery_id = session.bakery_id AND person.id = session.person_id
    WHERE session.bakery_id = ${actor.bakeryId}::uuid AND session.id = ${actor.sessionId}::uuid
      AND session.ended_at IS NULL AND session.ends_at > ${now}
      AND person.id = ${actor.personId}::uuid AND person.ended_at IS NULL AND person.role = ${actor.role}::role`
  return rows.length === 1
}

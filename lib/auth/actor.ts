import 'server-only'
import type { Role } from '../db/generated/enums'
import type { Db, Tx } from '../db/client'
import { hashSecret } from './secret'
import { sessionIdleMs } from './session-life'

/** The person who acts, as the database knows them at this moment. */
export type Actor = {
  bakeryId: string
  personId: string
  name: string
  email: string
  role: Role
  sessionId: string
  where: 'desk'
}

/**
 * Finds who holds a session secret. Nothing but the secret is taken from the caller: bakery, role and whether the
 * person still works here come from the rows, each time.
 * @returns nobody when the session is unknown, ended, idle too long or over, or the person was switched off
 */
export async function findActor(from: Db | Tx, sessionSecret: string | null, now: Date): Promise<Actor | null> {
  if (!sessionSecret) return null
  const pointer = await from.signInPointer.findUnique({
    where: { hash: hashSecret('session', sessionSecret), kind: 'session' },
    select: { bakeryId: true, targetId: true },
  })
  if (!pointer) return null
  const session = await from.session.findUnique({
    where: { bakeryId_id: { bakeryId: pointer.bakeryId, id: pointer.targetId } },
    select: {
      id: true,
      lastSeenAt: true,
      endsAt: true,
      endedAt: true,
      person: { select: { id: true, name: true, email: true, role: true, endedAt: true } },
    },
  })
  if (!session || session.endedAt || session.person.endedAt) return null
  if (now >= session.endsAt || now.getTime() - session.lastSeenAt.getTime() >= sessionIdleMs) return null
  const { id, name, email, role } = session.person
  return { bakeryId: pointer.bakeryId, personId: id, name, email, role, sessionId: session.id, where: 'desk' }
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

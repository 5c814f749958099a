import 'server-only'
import type { Tx } from '../db/client'
import type { Actor, DeskActor } from './actor'
import { isStillAtStation } from './find-at-station'

/** Whether somebody who was found is still who they were. At most one statement, for where others wait. */
export async function isStillActor(tx: Tx, actor: Actor, now: Date): Promise<boolean> {
  switch (actor.kind) {
    case 'desk':
      return isStillAtDesk(tx, actor, now)
    // Nobody can take a job's place away, and a bakery stays.
    case 'job':
      return true
    case 'station':
      return isStillAtStation(tx, actor, now)
    case 'taster':
      return false
    default:
      actor satisfies never
      return false
  }
}

/** The session open, the person here and of the same role. */
async function isStillAtDesk(tx: Tx, actor: DeskActor, now: Date): Promise<boolean> {
  const rows = await tx.$queryRaw<unknown[]>`
    SELECT 1 FROM session JOIN person ON person.bakery_id = session.bakery_id AND person.id = session.person_id
    WHERE session.bakery_id = ${actor.bakeryId}::uuid AND session.id = ${actor.sessionId}::uuid
      AND session.ended_at IS NULL AND session.ends_at > ${now}
      AND person.id = ${actor.personId}::uuid AND person.ended_at IS NULL AND person.role = ${actor.role}::role`
  return rows.length === 1
}

import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Db, Tx } from '../db/client'
import { log } from '../db/log'
import type { DeskActor } from './actor'
import { hashSecret, makeSecret } from './secret'
import { sessionLongestMs, sessionTouchMs } from './session-life'

const deviceLengthMost = 200

/** Opens a session and gives its secret, which is kept nowhere but in the cookie. */
export async function openSession(
  tx: Tx,
  whose: { bakeryId: string; personId: string },
  device: string,
  now: Date,
): Promise<string> {
  const secret = makeSecret()
  const id = uuid()
  await tx.session.create({
    data: {
      bakeryId: whose.bakeryId,
      id,
      personId: whose.personId,
      openedAt: now,
      lastSeenAt: now,
      endsAt: new Date(now.getTime() + sessionLongestMs),
      device: device.slice(0, deviceLengthMost),
    },
  })
  await tx.signInPointer.create({
    data: { hash: hashSecret('session', secret), kind: 'session', bakeryId: whose.bakeryId, targetId: id },
  })
  return secret
}

/**
 * Notes that a session was used, at most once a minute. It must not change an answer: what goes wrong here is logged,
 * and at worst the session ends early.
 */
export async function touchSession(db: Db, actor: DeskActor, now: Date): Promise<void> {
  const due = new Date(now.getTime() - sessionTouchMs)
  if (actor.sessionSeenAt >= due) return
  try {
    await db.session.updateMany({
      where: { bakeryId: actor.bakeryId, id: actor.sessionId, endedAt: null, lastSeenAt: { lt: due } },
      data: { lastSeenAt: now },
    })
  } catch (error) {
    log.warn({ event: 'session-not-touched', error })
  }
}

/** Ends a person's open sessions, all or all but one. @returns how many */
export async function endSessions(
  tx: Tx,
  whose: { bakeryId: string; personId: string },
  now: Date,
  except?: string,
): Promise<number> {
  const { count } = await tx.session.updateMany({
    where: {
      bakeryId: whose.bakeryId,
      personId: whose.personId,
      endedAt: null,
      ...(except && { id: { not: except } }),
    },
    data: { endedAt: now },
  })
  return count
}

import 'server-only'
import { z } from 'zod'
import { latestMoment, sessionIdleMs } from '../../auth/session-life'
import { query } from '../query'

/** The caller's own account: who they are here, which language they chose, and where they are signed in. */
export const getAccount = query({
  name: 'people.get-account',
  input: z.strictObject({}),
  right: 'own-account',
  async run({ db, actor, now }) {
    const key = { bakeryId: actor.bakeryId, id: actor.personId }
    const { language, pin } = await db.person.findUniqueOrThrow({
      where: { bakeryId_id: key },
      select: {
        language: true,
        pin: { select: { setAt: true, badge: { select: { madeAt: true, madeBy: { select: { name: true } } } } } },
      },
    })
    const sessions = await db.session.findMany({
      where: {
        bakeryId: actor.bakeryId,
        personId: actor.personId,
        endedAt: null,
        endsAt: { gt: now },
        lastSeenAt: { gt: new Date(now.getTime() - sessionIdleMs), lte: latestMoment() },
      },
      select: { id: true, device: true, openedAt: true, lastSeenAt: true },
      orderBy: { openedAt: 'desc' },
      take: 100,
    })
    return {
      name: actor.name,
      email: actor.email,
      role: actor.role,
      /** Of their own; null where they leave it to the bakery. */
      language,
      /** When they chose their PIN for tablets; null while they have none. */
      pinSetAt: pin?.setAt ?? null,
      /** When their badge was made and by whom; null while they have none. */
      badge: pin?.badge ?? null,
      sessions: sessions.map((session) => ({ ...session, isThis: session.id === actor.sessionId })),
    }
  },
})

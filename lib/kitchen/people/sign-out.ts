import 'server-only'
import { z } from 'zod'
import { command } from '../command'

/** Ends the session that calls. */
export const signOut = command({
  name: 'people.sign-out',
  input: z.strictObject({}),
  right: 'own-account',
  endsOwnSession: true,
  async run({ tx, actor, now }) {
    await tx.session.updateMany({
      where: { bakeryId: actor.bakeryId, id: actor.sessionId, endedAt: null },
      data: { endedAt: now },
    })
    return { value: null, audit: { target: actor.personId } }
  },
})

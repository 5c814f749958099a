import 'server-only'
import { z } from 'zod'
import { endSessions } from '../../auth/sessions'
import { command } from '../command'

/** Ends the caller's sessions on every other device. */
export const endOtherSessions = command({
  name: 'people.end-other-sessions',
  input: z.strictObject({}),
  right: 'own-account',
  async run({ tx, actor, now }) {
    const ended = await endSessions(tx, actor, now, actor.sessionId)
    return { value: { ended }, audit: { target: actor.personId, after: { ended } } }
  },
})

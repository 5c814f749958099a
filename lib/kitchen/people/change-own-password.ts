import 'server-only'
import { hashPassword } from '../../auth/password-hash'
import { endSessions } from '../../auth/sessions'
import { db } from '../../db/client'
import { command } from '../command'
import { changeOwnPasswordInput } from './change-own-password.input'
import { mustBeGoodPassword } from './must-be-good-password'

/** Changes the caller's password, with the present one asked, and ends their sessions everywhere else. */
export const changeOwnPassword = command({
  name: 'people.change-own-password',
  input: changeOwnPasswordInput,
  right: 'own-account',
  isSecret: true,
  askPassword: true,
  async prepare({ actor, input }) {
    const bakery = await db().bakery.findUniqueOrThrow({ where: { bakeryId: actor.bakeryId }, select: { name: true } })
    mustBeGoodPassword(input.newPassword, [bakery.name, actor.name, actor.email], 'newPassword')
    return hashPassword(input.newPassword)
  },
  async run({ tx, actor, now, prepared: hash }) {
    const key = { bakeryId: actor.bakeryId, personId: actor.personId }
    await tx.password.update({ where: { bakeryId_personId: key }, data: { hash, setAt: now } })
    const ended = await endSessions(tx, key, now, actor.sessionId)
    return { value: { ended }, audit: { target: actor.personId, after: { otherSessionsEnded: ended } } }
  },
})

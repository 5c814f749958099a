import 'server-only'
import { forgetPasswordTries } from '../../auth/password-attempts'
import { hashPassword } from '../../auth/password-hash'
import { endSessions, openSession } from '../../auth/sessions'
import { forgetSignInAttempts, signInName } from '../../auth/sign-in-attempts'
import { db, type Tx } from '../../db/client'
import { openCommand } from '../open-command'
import { Refusal } from '../refusal'
import { acceptInvitationInput } from './accept-invitation.input'
import { mustBeGoodPassword } from './must-be-good-password'
import { createPerson } from './new-bakery'
import { findOpenInvitation } from './open-invitation'

/**
 * Joins by an invitation, or chooses a new password by a reset link, and opens a session. A reset ends the person's
 * other sessions and lifts the wait after wrong tries.
 * Refuses: link-dead, a bad password, email-taken.
 */
export const acceptInvitation = openCommand({
  name: 'people.accept-invitation',
  input: acceptInvitationInput,
  async prepare({ now, input }) {
    const invitation = await findOpenInvitation(db(), input.secret, now)
    if (!invitation) throw new Refusal('link-dead')
    mustBeGoodPassword(input.password, [invitation.bakery.name, invitation.name, invitation.email])
    return hashPassword(input.password)
  },
  async run({ tx, caller, now, input, prepared: passwordHash }) {
    const invitation = await findOpenInvitation(tx, input.secret, now)
    if (!invitation) throw new Refusal('link-dead')
    const { bakeryId, name, email, role, purpose } = invitation
    const { count } = await tx.invitation.updateMany({
      where: { bakeryId, id: invitation.id, usedAt: null, withdrawnAt: null },
      data: { usedAt: now },
    })
    if (count !== 1) throw new Refusal('link-dead')
    const personId = invitation.personId
      ? await setNewPassword(
          tx,
          { bakeryId, personId: invitation.personId, address: caller.address },
          passwordHash,
          now,
        )
      : await createPerson(tx, bakeryId, { name, email, role, passwordHash }, now)
    const sessionSecret = await openSession(tx, { bakeryId, personId }, caller.device, now)
    return {
      value: { sessionSecret },
      audit: {
        bakeryId,
        who: { kind: 'desk', personId, name, role },
        target: personId,
        after: { purpose, name, email, role },
      },
    }
  },
})

async function setNewPassword(
  tx: Tx,
  whose: { bakeryId: string; personId: string; address: string },
  hash: string,
  now: Date,
): Promise<string> {
  const { bakeryId, personId } = whose
  const active = await tx.person.count({ where: { bakeryId, id: personId, endedAt: null } })
  if (active === 0) throw new Refusal('link-dead')
  await tx.password.update({ where: { bakeryId_personId: { bakeryId, personId } }, data: { hash, setAt: now } })
  await endSessions(tx, whose, now)
  await forgetSignInAttempts(tx, { who: signInName(whose, ''), address: whose.address }, now)
  await forgetPasswordTries(tx, whose, now)
  return personId
}

import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { createInvitation } from './create-invitation'
import { invitePersonInput } from './invite-person.input'
import { mayGiveRole } from './rules'

/**
 * Invites somebody by a single-use link that lives a day. The head baker invites shift bakers only.
 * @returns the link's secret, shown once to the person who invites
 * Refuses: role-not-yours-to-give, email-taken, already-invited.
 */
export const invitePerson = command({
  name: 'people.invite-person',
  input: invitePersonInput,
  right: 'manage-people',
  isSecret: true,
  async run({ tx, actor, now, input }) {
    if (!mayGiveRole(actor.role, input.role)) throw Refusal.at('role', 'role-not-yours-to-give')
    const isHere = await tx.person.count({ where: { bakeryId: actor.bakeryId, email: input.email } })
    if (isHere > 0) throw Refusal.at('email', 'email-taken')
    const { id, secret } = await createInvitation(tx, actor, { purpose: 'join', ...input }, now)
    return {
      value: { secret },
      audit: { target: id, after: { name: input.name, email: input.email, role: input.role } },
    }
  },
})

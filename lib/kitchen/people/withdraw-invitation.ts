import 'server-only'
import { z } from 'zod'
import { command } from '../command'
import { Refusal } from '../refusal'
import { mayGiveRole } from './rules'

/** Withdraws an open invitation, so that its link is dead at once. Refuses: not-found, not-allowed. */
export const withdrawInvitation = command({
  name: 'people.withdraw-invitation',
  input: z.strictObject({ invitationId: z.uuid() }),
  right: 'manage-people',
  async run({ tx, actor, now, input }) {
    const key = { bakeryId: actor.bakeryId, id: input.invitationId }
    const invitation = await tx.invitation.findUnique({
      where: { bakeryId_id: key },
      select: { role: true, email: true },
    })
    if (!invitation) throw new Refusal('not-found')
    if (!mayGiveRole(actor.role, invitation.role)) throw new Refusal('not-allowed')
    const { count } = await tx.invitation.updateMany({
      where: { ...key, usedAt: null, withdrawnAt: null },
      data: { withdrawnAt: now },
    })
    if (count !== 1) throw new Refusal('stale-moved-on')
    return { value: null, audit: { target: input.invitationId, before: { email: invitation.email } } }
  },
})

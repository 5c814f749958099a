import 'server-only'
import { z } from 'zod'
import { command } from '../command'
import { Refusal } from '../refusal'
import { createInvitation } from './create-invitation'

/**
 * Makes a link by which an owner chooses a new password: for whoever runs the install, on the machine itself, when nobody
 * of the bakery can, as a job of the install and of nobody. No route calls it. Their other links for a new password end,
 * their sessions when it is used.
 * Refuses: not-found.
 */
export const makeOwnerLink = command({
  name: 'people.make-owner-link',
  input: z.strictObject({ personId: z.uuid() }),
  right: 'make-owner-link',
  isSecret: true,
  async run({ tx, actor: { bakeryId }, now, input: { personId } }) {
    const owner = await tx.person.findFirst({
      where: { bakeryId, id: personId, role: 'owner', endedAt: null },
      select: { name: true, email: true },
    })
    if (!owner) throw new Refusal('not-found')
    const { name, email } = owner
    await tx.invitation.updateMany({
      where: { bakeryId, OR: [{ personId }, { email }], usedAt: null, withdrawnAt: null },
      data: { withdrawnAt: now },
    })
    const { secret } = await createInvitation(
      tx,
      { bakeryId, personId },
      { purpose: 'reset', personId, name, email, role: 'owner', onMachine: true },
      now,
    )
    return { value: { secret }, audit: { target: personId } }
  },
})

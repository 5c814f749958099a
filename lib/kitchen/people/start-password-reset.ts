import 'server-only'
import { z } from 'zod'
import { command } from '../command'
import { Refusal } from '../refusal'
import { createInvitation } from './create-invitation'
import { mayManage } from './rules'

/**
 * Makes a single-use link by which a person chooses a new password. Whoever makes it never sees the password.
 * Refuses: not-found, not-allowed, already-invited.
 */
export const startPasswordReset = command({
  name: 'people.start-password-reset',
  input: z.strictObject({ personId: z.uuid() }),
  right: 'manage-people',
  isSecret: true,
  askPassword: true,
  async run({ tx, actor, now, input }) {
    const person = await tx.person.findUnique({
      where: { bakeryId_id: { bakeryId: actor.bakeryId, id: input.personId } },
      select: { id: true, name: true, email: true, role: true, endedAt: true },
    })
    if (!person || person.endedAt) throw new Refusal('not-found')
    if (!mayManage(actor, person)) throw new Refusal('not-allowed')
    const { secret } = await createInvitation(
      tx,
      actor,
      { purpose: 'reset', personId: person.id, name: person.name, email: person.email, role: person.role },
      now,
    )
    return { value: { secret }, audit: { target: person.id } }
  },
})

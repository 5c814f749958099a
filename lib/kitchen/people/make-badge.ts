import 'server-only'
import { z } from 'zod'
import { giveBadge } from '../../auth/badges'
import { badgeText } from '../badge-text.input'
import { command } from '../command'
import { Refusal } from '../refusal'
import { mayManage } from './rules'

/**
 * Makes a badge for somebody who has a PIN, in place of the one that they had; the record says who made it.
 * @returns what its code says, shown once to whoever makes it
 * Refuses: not-found, not-allowed, badge-wants-pin.
 */
export const makeBadge = command({
  name: 'people.make-badge',
  input: z.strictObject({ personId: z.uuid() }),
  right: 'manage-people',
  isSecret: true,
  askPassword: true,
  async run({ tx, actor, now, input: { personId } }) {
    const { bakeryId } = actor
    const person = await tx.person.findUnique({
      where: { bakeryId_id: { bakeryId, id: personId } },
      select: { id: true, role: true, endedAt: true, pin: { select: { setAt: true } } },
    })
    if (!person || person.endedAt) throw new Refusal('not-found')
    if (!mayManage(actor, person)) throw new Refusal('not-allowed')
    if (!person.pin) throw new Refusal('badge-wants-pin')
    const secret = await giveBadge(tx, { bakeryId, personId, madeById: actor.personId }, now)
    return { value: { code: badgeText(secret) }, audit: { target: personId } }
  },
})

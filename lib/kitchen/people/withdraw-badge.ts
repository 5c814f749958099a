import 'server-only'
import { z } from 'zod'
import { endBadge } from '../../auth/badges'
import { command } from '../command'
import { Refusal } from '../refusal'
import { mayManage } from './rules'

/** Withdraws somebody's badge at once: whoever is on a tablet by it is logged off there. Refuses: not-found, not-allowed. */
export const withdrawBadge = command({
  name: 'people.withdraw-badge',
  input: z.strictObject({ personId: z.uuid() }),
  right: 'manage-people',
  async run({ tx, actor, now, input: { personId } }) {
    const { bakeryId } = actor
    const person = await tx.person.findUnique({
      where: { bakeryId_id: { bakeryId, id: personId } },
      select: { id: true, role: true },
    })
    if (!person) throw new Refusal('not-found')
    if (!mayManage(actor, person)) throw new Refusal('not-allowed')
    const wasThere = await endBadge(tx, { bakeryId, personId }, now)
    return { value: null, audit: wasThere ? { target: personId } : null }
  },
})

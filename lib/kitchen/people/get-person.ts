import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { Refusal } from '../refusal'
import { mayGiveRole, mayManage } from './rules'

const roles = ['owner', 'head_baker', 'shift_baker'] as const

/** One person, for those who manage people. Refuses: not-found. */
export const getPerson = query({
  name: 'people.get-person',
  input: z.strictObject({ personId: z.uuid() }),
  right: 'manage-people',
  async run({ db, actor, input }) {
    const person = await db.person.findUnique({
      where: { bakeryId_id: { bakeryId: actor.bakeryId, id: input.personId } },
      select: {
        id: true,
        name: true,
        email: true,
        role: true,
        createdAt: true,
        endedAt: true,
        revision: true,
        pin: { select: { badge: { select: { madeAt: true, madeBy: { select: { name: true } } } } } },
      },
    })
    if (!person) throw new Refusal('not-found')
    const { pin, ...rest } = person
    return {
      ...rest,
      hasPin: pin !== null,
      /** When their badge was made and by whom; null while they have none. */
      badge: pin?.badge ?? null,
      isMe: person.id === actor.personId,
      mayChange: mayManage(actor, person),
      rolesToGive: roles.filter((role) => mayGiveRole(actor.role, role)),
    }
  },
})

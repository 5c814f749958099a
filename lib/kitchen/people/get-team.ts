import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { query } from '../query'
import { mayGiveRole, mayManage } from './rules'

const roles = ['owner', 'head_baker', 'shift_baker'] as const

/** The people of the bakery. E-mail addresses and open invitations only for those who manage people. */
export const getTeam = query({
  name: 'people.get-team',
  input: z.strictObject({}),
  right: 'read-work',
  async run({ db, actor, now }) {
    const manages = levelOf(actor.role, 'manage-people') !== 'no'
    const people = await db.person.findMany({
      where: { bakeryId: actor.bakeryId },
      select: { id: true, name: true, role: true, createdAt: true, endedAt: true, email: manages, revision: true },
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      take: 500,
    })
    const invitations = manages
      ? await db.invitation.findMany({
          where: { bakeryId: actor.bakeryId, usedAt: null, withdrawnAt: null, endsAt: { gt: now } },
          select: { id: true, purpose: true, name: true, email: true, role: true, endsAt: true, invitedBy: { select: { name: true } } },
          orderBy: { createdAt: 'asc' },
          take: 500,
        })
      : []
    return {
      people: people.map(({ email, ...person }) => ({
        ...person,
        email: manages ? email : null,
        isMe: person.id === actor.personId,
        mayChange: mayManage(actor, person),
      })),
      invitations: invitations.map((invitation) => ({ ...invitation, mayWithdraw: mayGiveRole(actor.role, invitation.role) })),
      rolesToGive: roles.filter((role) => mayGiveRole(actor.role, role)),
      mayReadRecord: levelOf(actor.role, 'read-record') === 'yes',
      mayChangeSettings: levelOf(actor.role, 'change-settings') === 'yes',
    }
  },
})

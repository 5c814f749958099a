import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { after } from '../after.input'
import { keyParts } from '../page-cursor'
import { query } from '../query'
import { readPage } from '../read-page'
import { mayGiveRole, mayManage } from './rules'

const roles = ['owner', 'head_baker', 'shift_baker'] as const
/** When somebody came in, or was asked to; several may have at one moment. */
const byTime = z.tuple([keyParts.time, keyParts.id])
const beyondTime = (beyond: z.output<typeof byTime> | null) =>
  beyond ? { OR: [{ createdAt: { gt: beyond[0] } }, { createdAt: beyond[0], id: { gt: beyond[1] } }] } : {}

/** The people of the bakery, a page at a time, and how many of them work here. E-mail addresses and open invitations only for those who manage people. */
export const getTeam = query({
  name: 'people.get-team',
  input: z.strictObject({ after }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const manages = levelOf(actor, 'manage-people') !== 'no'
    const open = { bakeryId, usedAt: null, withdrawnAt: null, endsAt: { gt: now } }
    const [workingCount, people, invitations] = await Promise.all([
      db.person.count({ where: { bakeryId, endedAt: null } }),
      readPage({
        bakeryId,
        list: 'people',
        after: input.after,
        count: () => db.person.count({ where: { bakeryId } }),
        key: byTime,
        read: (beyond, take) =>
          db.person.findMany({
            where: { bakeryId, ...beyondTime(beyond) },
            select: {
              id: true,
              name: true,
              role: true,
              createdAt: true,
              endedAt: true,
              email: manages,
              revision: true,
            },
            orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
            take,
          }),
        keyOf: ({ createdAt, id }) => [createdAt.toISOString(), id],
      }),
      readPage({
        bakeryId,
        list: 'invitations',
        after: input.after,
        count: () => db.invitation.count({ where: open }),
        key: byTime,
        read: async (beyond, take) =>
          manages
            ? db.invitation.findMany({
                where: { ...open, ...beyondTime(beyond) },
                select: {
                  id: true,
                  purpose: true,
                  name: true,
                  email: true,
                  role: true,
                  endsAt: true,
                  createdAt: true,
                  invitedBy: { select: { name: true } },
                },
                orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
                take,
              })
            : [],
        keyOf: ({ createdAt, id }) => [createdAt.toISOString(), id],
      }),
    ])
    return {
      people: {
        ...people,
        rows: people.rows.map(({ email, ...person }) => ({
          ...person,
          email: manages ? email : null,
          isMe: person.id === actor.personId,
          mayChange: mayManage(actor, person),
        })),
      },
      workingCount,
      invitations: {
        ...invitations,
        rows: invitations.rows.map((invitation) => ({
          ...invitation,
          mayWithdraw: mayGiveRole(actor.role, invitation.role),
        })),
      },
      rolesToGive: roles.filter((role) => mayGiveRole(actor.role, role)),
      mayReadRecord: levelOf(actor, 'read-record') === 'yes',
      mayManageStations: levelOf(actor, 'manage-stations') === 'yes',
      mayChangeSettings: levelOf(actor, 'change-settings') === 'yes',
    }
  },
})

import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { after } from '../after.input'
import { keyParts } from '../page-cursor'
import { query } from '../query'
import { readPage } from '../read-page'

const byTime = z.tuple([keyParts.time, keyParts.id])
const beyondTime = (beyond: z.output<typeof byTime> | null) =>
  beyond ? { OR: [{ madeAt: { lt: beyond[0] } }, { madeAt: beyond[0], id: { lt: beyond[1] } }] } : {}

/** The bakery's tablets, those that were withdrawn too, the latest first; and who has a PIN to log on with. */
export const listStations = query({
  name: 'stations.list-stations',
  input: z.strictObject({ after }),
  right: 'manage-stations',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const [people, stations] = await Promise.all([
      db.person.findMany({
        where: { bakeryId, endedAt: null },
        select: { id: true, name: true, pin: { select: { setAt: true } } },
        orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      }),
      readPage({
        bakeryId,
        list: 'stations',
        after: input.after,
        count: () => db.station.count({ where: { bakeryId } }),
        key: byTime,
        read: (beyond, take) =>
          db.station.findMany({
            where: { bakeryId, ...beyondTime(beyond) },
            select: {
              id: true,
              name: true,
              madeAt: true,
              codeEndsAt: true,
              enrolledAt: true,
              lastSeenAt: true,
              withdrawnAt: true,
              ownerToldAt: true,
              madeBy: { select: { name: true } },
              withdrawnBy: { select: { name: true } },
            },
            orderBy: [{ madeAt: 'desc' }, { id: 'desc' }],
            take,
          }),
        keyOf: ({ madeAt, id }) => [madeAt.toISOString(), id],
      }),
    ])
    const isOwner = levelOf(actor, 'change-settings') === 'yes'
    return {
      stations: {
        ...stations,
        rows: stations.rows.map(({ ownerToldAt, codeEndsAt, enrolledAt, withdrawnAt, ...station }) => ({
          ...station,
          enrolledAt,
          withdrawnAt,
          state: stateOf({ codeEndsAt, enrolledAt, withdrawnAt }, now),
          /** Somebody else did this, and whoever asks is an owner who has not said yet that they know. */
          isNews: isOwner && ownerToldAt === null,
        })),
      },
      people: people.map(({ pin, ...person }) => ({ ...person, hasPin: pin !== null })),
    }
  },
})

function stateOf(
  { codeEndsAt, enrolledAt, withdrawnAt }: { codeEndsAt: Date; enrolledAt: Date | null; withdrawnAt: Date | null },
  now: Date,
): 'withdrawn' | 'enrolled' | 'waiting' | 'ran-out' {
  if (withdrawnAt) return 'withdrawn'
  if (enrolledAt) return 'enrolled'
  return codeEndsAt > now ? 'waiting' : 'ran-out'
}

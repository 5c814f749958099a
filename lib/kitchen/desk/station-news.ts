import 'server-only'
import type { Db } from '../../db/client'
import type { Prisma } from '../../db/generated/client'
import { fewOf, mostRead } from './few-of'

const isNews = { ownerToldAt: null } satisfies Prisma.StationWhereInput

/** What is read of a bakery's tablets together with the bakery, so that it takes no statement of its own. */
export const newsOfStations = {
  stations: {
    where: isNews,
    select: {
      id: true,
      name: true,
      madeAt: true,
      withdrawnAt: true,
      madeBy: { select: { name: true } },
      withdrawnBy: { select: { name: true } },
    },
    orderBy: [{ madeAt: 'asc' }, { id: 'asc' }],
    take: mostRead,
  },
} satisfies Prisma.BakerySelect

type Read = Prisma.BakeryGetPayload<{ select: typeof newsOfStations }>

/** Tablets that somebody else drew up or withdrew, and of which no owner has said yet that they know. */
export function stationNews(db: Db, bakeryId: string, read: Promise<Read>) {
  return fewOf(
    async () =>
      (await read).stations.map(({ madeAt, madeBy, withdrawnAt, withdrawnBy, ...station }) => ({
        ...station,
        isWithdrawn: withdrawnAt !== null,
        who: (withdrawnBy ?? madeBy).name,
        since: withdrawnAt ?? madeAt,
      })),
    () => db.station.count({ where: { bakeryId, ...isNews } }),
  )
}

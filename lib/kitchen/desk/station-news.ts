import 'server-only'
import type { DeskActor } from '../../auth/actor'
import type { Db } from '../../db/client'
import { fewOf } from './few-of'

/** Tablets that somebody else drew up or withdrew, and of which no owner has said yet that they know. */
export function stationNews(db: Db, { bakeryId }: DeskActor) {
  const where = { bakeryId, ownerToldAt: null }
  return fewOf(
    async (take) => {
      const stations = await db.station.findMany({
        where,
        select: {
          id: true,
          name: true,
          madeAt: true,
          withdrawnAt: true,
          madeBy: { select: { name: true } },
          withdrawnBy: { select: { name: true } },
        },
        orderBy: [{ madeAt: 'asc' }, { id: 'asc' }],
        take,
      })
      return stations.map(({ madeAt, madeBy, withdrawnAt, withdrawnBy, ...station }) => ({
        ...station,
        isWithdrawn: withdrawnAt !== null,
        who: (withdrawnBy ?? madeBy).name,
        since: withdrawnAt ?? madeAt,
      }))
    },
    () => db.station.count({ where }),
  )
}

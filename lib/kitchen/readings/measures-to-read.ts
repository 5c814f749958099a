import 'server-only'
import type { Db, Tx } from '../../db/client'

/** The measures of a bakery in their order, with what it takes to read, check and settle them; ended ones are left out. */
export function measuresToRead(from: Db | Tx, bakeryId: string) {
  return from.measure.findMany({
    where: { bakeryId, endedAt: null },
    select: {
      id: true,
      code: true,
      name: true,
      unit: true,
      digits: true,
      level: true,
      derivation: true,
      repeats: true,
      repeatLimit: true,
      plausibleLeast: true,
      plausibleMost: true,
      method: true,
    },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    take: 200,
  })
}

import 'server-only'
import type { Db, Tx } from '../../db/client'

/** The measures of a bakery in their order, with what it takes to read, check and settle them; ended ones are left out. */
export async function measuresToRead(from: Db | Tx, bakeryId: string) {
  return (await everyMeasure(from, bakeryId)).filter(({ endedAt }) => endedAt === null)
}

/** Ended measures as well: readings by them stand. */
export function everyMeasure(from: Db | Tx, bakeryId: string) {
  return from.measure.findMany({
    where: { bakeryId },
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
      endedAt: true,
    },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    take: 200,
  })
}

import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { AgeWindow } from './due-by-age.input'

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

/**
 * At what age out of the oven a bakery's measures are read. It is no part of what a closing keeps of them: it says when
 * somebody reads, not what a reading is.
 */
export async function agesOfMeasures(from: Db | Tx, bakeryId: string): Promise<(measureId: string) => AgeWindow> {
  const rows = await from.measure.findMany({
    where: { bakeryId, ageLeastH: { not: null } },
    select: { id: true, ageLeastH: true, ageMostH: true },
  })
  const ages = new Map(rows.map(({ id, ...age }) => [id, age]))
  return (measureId) => ages.get(measureId) ?? { ageLeastH: null, ageMostH: null }
}

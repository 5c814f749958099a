import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { Prisma } from '../../db/generated/client'
import type { AgeWindow } from './due-by-age.input'

/** The measures of a bakery in their order, with what it takes to read, check and settle them; ended ones are left out. */
export async function measuresToRead(from: Db | Tx, bakeryId: string) {
  return inUse(await everyMeasure(from, bakeryId))
}

/** Those of them that were not ended. */
export function inUse<Measure extends { endedAt: Date | null }>(measures: readonly Measure[]): Measure[] {
  return measures.filter(({ endedAt }) => endedAt === null)
}

/** Ended measures as well: readings by them stand. */
export function everyMeasure(from: Db | Tx, bakeryId: string) {
  return from.measure.findMany({ ...measuresOf(bakeryId), select: columns })
}

/**
 * Ended measures as well, and at what age out of the oven each is read. The age is no part of a measure here, as it is
 * none of what a closing keeps: it says when somebody reads, not what a reading is.
 */
export async function everyMeasureAndAge(from: Db | Tx, bakeryId: string) {
  const rows = await from.measure.findMany({
    ...measuresOf(bakeryId),
    select: { ...columns, ageLeastH: true, ageMostH: true },
  })
  const ages = new Map(rows.map(({ id, ageLeastH, ageMostH }) => [id, { ageLeastH, ageMostH }]))
  return {
    measures: rows.map(({ ageLeastH: _, ageMostH: __, ...measure }) => measure),
    ageOf: (measureId: string): AgeWindow => ages.get(measureId) ?? { ageLeastH: null, ageMostH: null },
  }
}

const columns = {
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
} as const

function measuresOf(bakeryId: string) {
  return {
    where: { bakeryId },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    take: 200,
  } satisfies Prisma.MeasureFindManyArgs
}

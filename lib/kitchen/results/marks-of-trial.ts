import 'server-only'
import type { Db } from '../../db/client'
import { markedIn, marksOfDoughs } from '../checks/marks-of-doughs'
import { currentReadings } from '../readings/current-readings'
import { everyMeasure } from '../readings/measures-to-read'

/**
 * What of a trial was read or weighed around a check that failed, by the doughs' codes. It goes by the book as it is now:
 * a check may come in long after the readings were closed, and takes nothing out.
 */
export async function marksOfTrial(db: Db, bakeryId: string, trialId: string) {
  const [batches, measures] = await Promise.all([
    db.batch.findMany({
      where: { bakeryId, trialId },
      select: {
        id: true,
        code: true,
        readings: {
          select: { id: true, measureId: true, value: true, takenAt: true, receivedAt: true, supersedesId: true },
        },
        weighings: { select: { takenAt: true, receivedAt: true } },
      },
      orderBy: { plannedOrder: 'asc' },
    }),
    everyMeasure(db, bakeryId),
  ])
  const doughs = batches.map(({ readings, ...batch }) => ({ ...batch, readings: currentReadings(readings) }))
  const marks = await marksOfDoughs(db, bakeryId, doughs, measures)
  return marks.map(({ of, ...mark }) => ({
    ...mark,
    doughs: batches.flatMap(({ id, code }) => {
      const own = of.filter(({ batchId }) => batchId === id)
      return own.length === 0 ? [] : [{ code, ...markedIn(own, measures) }]
    }),
  }))
}

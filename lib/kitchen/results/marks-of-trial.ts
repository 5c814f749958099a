import 'server-only'
import { groupBy } from '../../calc/group-by'
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
  return marks.map(({ of, ...mark }) => {
    const marked = batches.flatMap(({ id, code }) => {
      const own = of.filter(({ batchId }) => batchId === id)
      return own.length === 0 ? [] : [{ code, ...markedIn(own, measures) }]
    })
    // Doughs of which the same is marked are named together.
    const alike = groupBy(marked, ({ code: _, ...same }) => JSON.stringify(same))
    return {
      ...mark,
      doughs: [...alike.values()].flatMap((group) => {
        const [first] = group
        return first ? [{ codes: group.map(({ code }) => code), weighed: first.weighed, readings: first.readings }] : []
      }),
    }
  })
}

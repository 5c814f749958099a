import 'server-only'
import type { Db, Tx } from '../../db/client'
import { decidingMeasures } from './deciding-measures'
import { everyMeasure } from './measures-to-read'

/**
 * When the first reading of a batch came in that tells of the trial's primary measure, also one that was corrected since;
 * null when none has. What a piece weighed before the oven tells nothing of the loaf that is worked out with it.
 */
export async function firstDecidingReading(
  from: Db | Tx,
  bakeryId: string,
  batch: { id: string; trialId: string; primaryId: string },
): Promise<Date | null> {
  const measures = await everyMeasure(from, bakeryId)
  const atScaling = new Set(measures.filter(({ code }) => code === 'dough-mass').map(({ id }) => id))
  const telling = [...decidingMeasures(measures, batch.primaryId)].filter(
    (id) => id === batch.primaryId || !atScaling.has(id),
  )
  const first = await from.reading.findFirst({
    where: { bakeryId, trialId: batch.trialId, batchId: batch.id, measureId: { in: telling } },
    orderBy: { receivedAt: 'asc' },
    select: { receivedAt: true },
  })
  return first?.receivedAt ?? null
}

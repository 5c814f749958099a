import 'server-only'
import type { Db, Tx } from '../../db/client'
import { everyMeasure } from './measures-to-read'
import { tellingMeasures } from './telling-measures'

/**
 * When the first reading of a batch came in that tells of the trial's primary measure, also one that was corrected since;
 * null when none has.
 */
export async function firstDecidingReading(
  from: Db | Tx,
  bakeryId: string,
  batch: { id: string; trialId: string; primaryId: string },
): Promise<Date | null> {
  const measures = await everyMeasure(from, bakeryId)
  const telling = tellingMeasures(measures, batch.primaryId)
  const first = await from.reading.findFirst({
    where: { bakeryId, trialId: batch.trialId, batchId: batch.id, measureId: { in: telling } },
    orderBy: { receivedAt: 'asc' },
    select: { receivedAt: true },
  })
  return first?.receivedAt ?? null
}

import 'server-only'
import type { Db, Tx } from '../../db/client'
import { everyMeasure } from './measures-to-read'
import { tellingMeasures } from './telling-measures'

/**
 * When the first of a batch's readings came in that tells of the trial's primary measure; null when none has.
 * @param measures of the bakery, ended ones too; @param readings of the batch, corrected ones too
 */
export function firstDecidingOf(
  readings: readonly { measureId: string; receivedAt: Date }[],
  measures: Parameters<typeof tellingMeasures>[0],
  primaryId: string,
): Date | null {
  const telling = tellingMeasures(measures, primaryId)
  const times = readings.flatMap(({ measureId, receivedAt }) => (telling.has(measureId) ? receivedAt.getTime() : []))
  return times.length === 0 ? null : new Date(Math.min(...times))
}

/**
 * When the first reading of a batch came in that tells of the trial's primary measure, also one that was corrected since;
 * null when none has.
 */
export async function firstDecidingReading(
  from: Db | Tx,
  bakeryId: string,
  batch: { id: string; trialId: string; primaryId: string },
): Promise<Date | null> {
  const telling = [...tellingMeasures(await everyMeasure(from, bakeryId), batch.primaryId)]
  const first = await from.reading.findFirst({
    where: { bakeryId, trialId: batch.trialId, batchId: batch.id, measureId: { in: telling } },
    orderBy: { receivedAt: 'asc' },
    select: { receivedAt: true },
  })
  return first?.receivedAt ?? null
}

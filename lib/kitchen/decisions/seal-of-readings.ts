import 'server-only'
import type { Db, Tx } from '../../db/client'
import { readingsSeal } from '../../documents/evidence/readings-seal'
import { measuresOfUse } from '../results/readings-of-trial'

/**
 * One hash over the readings that a trial's result rests on, corrections in place of what they correct. A reading that
 * is added or corrected changes it.
 */
export async function sealOfReadings(from: Db | Tx, bakeryId: string, trialId: string, primary: { id: string }): Promise<{ count: number; hash: string }> {
  const readings = await from.reading.findMany({
    where: { bakeryId, trialId, supersededBy: { none: {} }, measure: measuresOfUse(primary) },
    select: { id: true, contentHash: true },
    orderBy: { id: 'asc' },
  })
  return readingsSeal(readings)
}

import 'server-only'
import type { Db, Tx } from '../../db/client'
import { readingsSeal } from '../../documents/evidence/readings-seal'
import { usedCodes } from '../results/readings-of-trial'

/**
 * One hash over the readings that a trial's result rests on, corrections in place of what they correct. A reading that
 * is added or corrected changes it.
 */
export async function sealOfReadings(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
  primary: { id: string },
): Promise<{ count: number; hash: string }> {
  const readings = await from.$queryRaw<{ id: string; contentHash: string }[]>`
    SELECT reading.id, reading.content_hash AS "contentHash"
    FROM reading JOIN measure ON measure.bakery_id = reading.bakery_id AND measure.id = reading.measure_id
    WHERE reading.bakery_id = ${bakeryId}::uuid AND reading.trial_id = ${trialId}::uuid
      AND (measure.id = ${primary.id}::uuid OR measure.code = ANY(${[...usedCodes]}))
      AND NOT EXISTS (SELECT 1 FROM reading AS later WHERE later.bakery_id = reading.bakery_id AND later.supersedes_id = reading.id)
    ORDER BY reading.id`
  return readingsSeal(readings)
}

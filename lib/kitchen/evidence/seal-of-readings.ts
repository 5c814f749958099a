import 'server-only'
import { createHash } from 'node:crypto'
import type { Db, Tx } from '../../db/client'
import { measuresOfUse } from './readings-of-trial'

/**
 * One hash over the readings that a trial's result rests on, corrections in place of what they correct: SHA-256 of
 * 'id content-hash' of each, a line each, in the order of the ids. A reading that is added or corrected changes it.
 */
export async function sealOfReadings(from: Db | Tx, bakeryId: string, trialId: string, primary: { id: string }): Promise<{ count: number; hash: string }> {
  const readings = await from.reading.findMany({
    where: { bakeryId, trialId, supersededBy: { none: {} }, measure: measuresOfUse(primary) },
    select: { id: true, contentHash: true },
    orderBy: { id: 'asc' },
  })
  const text = readings.map(({ id, contentHash }) => `${id} ${contentHash}\n`).join('')
  return { count: readings.length, hash: createHash('sha256').update(text, 'utf8').digest('hex') }
}

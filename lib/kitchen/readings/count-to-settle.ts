import 'server-only'
import type { Db, Tx } from '../../db/client'
import { isToSettle } from './is-to-settle'

/** How many entries are kept aside for each batch of a trial, and not settled; a batch without any is left out. */
export async function countToSettle(from: Db | Tx, bakeryId: string, trialId: string): Promise<Map<string, number>> {
  const counted = await from.entryToSettle.groupBy({
    by: ['batchId'],
    where: { bakeryId, trialId, ...isToSettle },
    _count: true,
  })
  return new Map(counted.map(({ batchId, _count }) => [batchId, _count]))
}

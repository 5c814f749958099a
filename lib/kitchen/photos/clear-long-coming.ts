import 'server-only'
import type { Db } from '../../db/client'
import { inTransaction } from '../../db/transaction'
import { clearComing } from './clear-coming'

/** Whoever still has a photo after this sends it from the start. */
const keptMs = 24 * 60 * 60_000

/** Lets go of photos that were begun over a day ago and did not come, one at a time. */
export async function clearLongComing(db: Db, now: Date, signal: AbortSignal): Promise<void> {
  const before = new Date(now.getTime() - keptMs)
  const late = await db.comingPhoto.findMany({
    where: { begunAt: { lt: before } },
    select: { bakeryId: true, id: true },
  })
  for (const { bakeryId, id } of late) {
    signal.throwIfAborted()
    await inTransaction((tx) => clearComing(tx, bakeryId, id))
  }
}

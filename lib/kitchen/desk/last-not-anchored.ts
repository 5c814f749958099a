import 'server-only'
import type { Db } from '../../db/client'

/** When the install last failed to note outside the database where the records stand; null where it did not. */
export async function lastNotAnchored(db: Db): Promise<{ at: Date } | null> {
  const run = await db.jobRun.findUnique({
    where: { name: 'anchor-records' },
    select: { beganAt: true, outcome: true },
  })
  return run?.outcome === 'failed' ? { at: run.beganAt } : null
}

import 'server-only'
import type { Db } from '../../db/client'

/** What was noted at the doughs of a trial as it happened, also at one that counts, in the order in which it was noted. */
export async function causesOfTrial(db: Db, bakeryId: string, trialId: string) {
  const causes = await db.batchCause.findMany({
    where: { bakeryId, trialId },
    select: {
      id: true,
      what: true,
      noticedAt: true,
      at: true,
      person: { select: { name: true } },
      batch: { select: { code: true } },
    },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  })
  return causes.map(({ batch, person, ...cause }) => ({ ...cause, code: batch.code, who: person.name }))
}

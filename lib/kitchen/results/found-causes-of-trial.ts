import 'server-only'
import type { Db } from '../../db/client'

/** What was found later at the doughs of a trial, in the order in which it was noted, and who signed it; null where nobody has. */
export async function foundCausesOfTrial(db: Db, bakeryId: string, trialId: string) {
  const causes = await db.foundCause.findMany({
    where: { bakeryId, trialId },
    select: {
      id: true,
      object: true,
      what: true,
      at: true,
      foundBy: { select: { name: true } },
      signature: { select: { signsAs: true, signedBy: { select: { name: true } } } },
      batch: { select: { id: true, code: true } },
    },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  })
  return causes.map(({ batch, foundBy, signature, ...cause }) => ({
    ...cause,
    batchId: batch.id,
    code: batch.code,
    who: foundBy.name,
    signed: signature && { who: signature.signedBy.name, isAlone: signature.signsAs === 'alone' },
  }))
}

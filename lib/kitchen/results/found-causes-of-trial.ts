import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { Closing } from '../../documents/closing/closing'

/** What was found later at the doughs of a trial, in the order in which it was noted, and who signed it; null where nobody has. */
export async function foundCausesOfTrial(from: Db | Tx, bakeryId: string, trialId: string): Promise<Closing['found']> {
  const person = { select: { id: true, name: true } } as const
  const causes = await from.foundCause.findMany({
    where: { bakeryId, trialId },
    select: {
      id: true,
      batchId: true,
      object: true,
      what: true,
      at: true,
      foundBy: person,
      signature: { select: { signsAs: true, at: true, signedBy: person } },
    },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  })
  return causes.map(({ id, batchId, object, what, at, foundBy, signature }) => ({
    id,
    dough: batchId,
    object,
    what,
    by: foundBy,
    at: at.toISOString(),
    signed: signature && {
      as: signature.signsAs === 'alone' ? 'alone' : 'second_person',
      by: signature.signedBy,
      at: signature.at.toISOString(),
    },
  }))
}

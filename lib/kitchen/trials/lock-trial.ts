import 'server-only'
import type { Tx } from '../../db/client'
import { Refusal } from '../refusal'

const select = {
  id: true,
  number: true,
  state: true,
  revision: true,
  proposedById: true,
  planHash: true,
  controlVersionId: true,
  question: true,
} as const

/** Holds a trial until the transaction ends, and reads where it stands. @throws Refusal 'not-found' */
export async function lockTrial(tx: Tx, bakeryId: string, trialId: string) {
  await tx.$queryRaw`SELECT 1 FROM trial WHERE bakery_id = ${bakeryId}::uuid AND id = ${trialId}::uuid FOR UPDATE`
  const trial = await tx.trial.findUnique({ where: { bakeryId_id: { bakeryId, id: trialId } }, select })
  if (!trial) throw new Refusal('not-found')
  return trial
}

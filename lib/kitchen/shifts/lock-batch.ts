import 'server-only'
import type { Tx } from '../../db/client'
import { Refusal } from '../refusal'

/**
 * Locks a batch for a decision that rests on several rows, and its trial before it: shared, so that nobody closes or
 * stops the trial meanwhile, or alone where the trial itself is to change.
 * Refuses: not-found.
 */
export async function lockBatch(tx: Tx, bakeryId: string, batchId: string, trialLock: 'shared' | 'alone' = 'shared') {
  const found = await tx.batch.findUnique({ where: { bakeryId_id: { bakeryId, id: batchId } }, select: { trialId: true } })
  if (!found) throw new Refusal('not-found')
  if (trialLock === 'alone') await tx.$queryRaw`SELECT 1 FROM trial WHERE bakery_id = ${bakeryId}::uuid AND id = ${found.trialId}::uuid FOR UPDATE`
  else await tx.$queryRaw`SELECT 1 FROM trial WHERE bakery_id = ${bakeryId}::uuid AND id = ${found.trialId}::uuid FOR SHARE`
  await tx.$queryRaw`SELECT 1 FROM batch WHERE bakery_id = ${bakeryId}::uuid AND id = ${batchId}::uuid FOR UPDATE`
  return tx.batch.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId, id: batchId } },
    select: {
      id: true,
      trialId: true,
      code: true,
      state: true,
      plannedOrder: true,
      piecesMade: true,
      piecesGood: true,
      revision: true,
      mixingDay: { select: { number: true } },
      trial: { select: { state: true, piecesPerBatch: true, factorName: true, factorLevels: true, createdAt: true } },
    },
  })
}

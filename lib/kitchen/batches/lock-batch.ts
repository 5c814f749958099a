import 'server-only'
import type { Tx } from '../../db/client'
import { Refusal } from '../refusal'

/**
 * Locks a batch for a decision that rests on several rows, and its trial before it, so that nobody closes or stops the
 * trial meanwhile. What concerns one dough lets all others of the trial go on; what rests on the drawn order, such as
 * which dough is begun next, waits for others of its kind and for nothing else.
 * Refuses: not-found.
 */
export async function lockBatch(tx: Tx, bakeryId: string, batchId: string, restsOn: 'dough' | 'order' = 'dough') {
  const found = await tx.batch.findUnique({
    where: { bakeryId_id: { bakeryId, id: batchId } },
    select: { trialId: true },
  })
  if (!found) throw new Refusal('not-found')
  // Closing takes the row FOR UPDATE, which either of these keeps out; they do not keep out each other.
  if (restsOn === 'order')
    await tx.$queryRaw`SELECT 1 FROM trial WHERE bakery_id = ${bakeryId}::uuid AND id = ${found.trialId}::uuid FOR NO KEY UPDATE`
  else
    await tx.$queryRaw`SELECT 1 FROM trial WHERE bakery_id = ${bakeryId}::uuid AND id = ${found.trialId}::uuid FOR KEY SHARE`
  await tx.$queryRaw`SELECT 1 FROM batch WHERE bakery_id = ${bakeryId}::uuid AND id = ${batchId}::uuid FOR UPDATE`
  return tx.batch.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId, id: batchId } },
    select: {
      id: true,
      trialId: true,
      code: true,
      state: true,
      plannedOrder: true,
      begunAt: true,
      piecesMade: true,
      piecesGood: true,
      revision: true,
      movedFrom: true,
      movedAt: true,
      movedById: true,
      movedRevision: true,
      arm: { select: { position: true } },
      mixingDay: { select: { number: true } },
      trial: {
        select: {
          state: true,
          measureId: true,
          piecesPerBatch: true,
          factorName: true,
          factorLevels: true,
          createdAt: true,
        },
      },
    },
  })
}

import 'server-only'
import type { Tx } from '../../db/client'
import type { BatchState, TrialState } from '../../db/generated/enums'
import type { BatchFacts } from './reading-facts'

type BatchRow = Omit<BatchFacts, 'trial' | 'state'> & {
  state: BatchState
  trialState: TrialState
  piecesPerBatch: number
  factorName: string | null
  factorLevels: string[]
  createdAt: Date
  isSealed: boolean
}

/**
 * Locks batches with their trials before them as `lockBatch` does, all in one order, and says of each what entries are
 * judged by.
 * @param ofReadings ids of readings, in the book or aside, whose batches are locked as well
 */
export async function lockBatches(
  tx: Tx,
  bakeryId: string,
  named: readonly string[],
  ofReadings: readonly string[],
): Promise<BatchFacts[]> {
  // A batch's trial and a reading's batch never change, so they can be looked up by the statements that lock.
  await tx.$queryRaw`
    SELECT 1 FROM trial WHERE bakery_id = ${bakeryId}::uuid AND id IN (
      SELECT trial_id FROM batch WHERE bakery_id = ${bakeryId}::uuid AND id = ANY(${named}::uuid[])
      UNION SELECT trial_id FROM reading WHERE bakery_id = ${bakeryId}::uuid AND id = ANY(${ofReadings}::uuid[])
      UNION SELECT trial_id FROM entry_to_settle WHERE bakery_id = ${bakeryId}::uuid AND entry_id = ANY(${ofReadings}::uuid[])
    ) ORDER BY id FOR KEY SHARE`
  const rows = await tx.$queryRaw<BatchRow[]>`
    SELECT batch.id, batch.trial_id AS "trialId", batch.code, batch.state::text, trial.state::text AS "trialState",
      trial.pieces_per_batch AS "piecesPerBatch", trial.factor_name AS "factorName", trial.factor_levels AS "factorLevels", trial.created_at AS "createdAt",
      EXISTS (SELECT 1 FROM closing WHERE closing.bakery_id = trial.bakery_id AND closing.trial_id = trial.id) AS "isSealed"
    FROM batch
    JOIN trial ON trial.bakery_id = batch.bakery_id AND trial.id = batch.trial_id
    WHERE batch.bakery_id = ${bakeryId}::uuid AND batch.id IN (
      SELECT unnest(${named}::uuid[])
      UNION SELECT batch_id FROM reading WHERE bakery_id = ${bakeryId}::uuid AND id = ANY(${ofReadings}::uuid[])
      UNION SELECT batch_id FROM entry_to_settle WHERE bakery_id = ${bakeryId}::uuid AND entry_id = ANY(${ofReadings}::uuid[])
    ) ORDER BY batch.id FOR UPDATE OF batch`
  return rows.map(({ id, trialId, code, state, trialState, ...trial }) => ({
    id,
    trialId,
    code,
    state,
    trial: { state: trialState, ...trial },
  }))
}

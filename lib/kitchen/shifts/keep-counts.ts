import 'server-only'
import type { Tx } from '../../db/client'

/** A count as it stands in the book. */
export type CountRow = {
  bakeryId: string
  id: string
  trialId: string
  batchId: string
  made: number
  good: number
  sampled: number | null
  sold: number | null
  given: number | null
  wasted: number | null
  at: Date
  clockAheadS: number | null
  personId: string
  takenAt: Date
  receivedAt: Date
  contentHash: string
}

/** Keeps counts of doughs that are locked; each dough has what its latest count says. One that
 * comes in late moves nothing, so that nobody's form is out of date by it. */
export async function keepCounts(tx: Tx, bakeryId: string, rows: readonly CountRow[]): Promise<void> {
  await tx.pieceCount.createMany({ data: [...rows] })
  await tx.$executeRaw`
    UPDATE batch SET pieces_made = stands.made, pieces_good = stands.good, revision = batch.revision + 1
    FROM (
      SELECT DISTINCT ON (batch_id) batch_id, id, made, good FROM piece_count
      WHERE bakery_id = ${bakeryId}::uuid AND batch_id = ANY(${rows.map(({ batchId }) => batchId)}::uuid[])
      -- As countThatStands has it.
      ORDER BY batch_id, at DESC, received_at DESC, id DESC
    ) AS stands
    WHERE batch.bakery_id = ${bakeryId}::uuid AND batch.id = stands.batch_id
      AND stands.id = ANY(${rows.map(({ id }) => id)}::uuid[])`
}

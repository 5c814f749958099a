import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { countPiecesInput } from './count-pieces.input'
import { lockBatch } from '../batches/lock-batch'
import { mustBeOpen } from '../trials/must-be-open'

/**
 * Counts how many pieces a batch made and how many of them are good, or counts again.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, stale, batch-not-begun, batch-not-baked.
 */
export const countPieces = command({
  name: 'shifts.count-pieces',
  input: countPiecesInput,
  right: 'log-reading',
  async run({ tx, actor, input }) {
    const batch = await lockBatch(tx, actor.bakeryId, input.batchId)
    mustBeOpen(batch.trial.state)
    if (batch.revision !== input.seenRevision) throw await staleRefusal(tx, actor, batch.id)
    if (batch.state === 'waiting') throw new Refusal('batch-not-begun')
    if (batch.state === 'not_baked') throw new Refusal('batch-not-baked')
    const { count } = await tx.batch.updateMany({
      where: { bakeryId: actor.bakeryId, id: batch.id, revision: input.seenRevision },
      data: { piecesMade: input.piecesMade, piecesGood: input.piecesGood, revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, batch.id)
    return {
      value: null,
      audit: {
        target: batch.id,
        before: { made: batch.piecesMade, good: batch.piecesGood },
        after: { made: input.piecesMade, good: input.piecesGood, batch: batch.code },
      },
    }
  },
})

import 'server-only'
import { v7 as uuid } from 'uuid'
import { hashOfText } from '../../documents/hash-of-text'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { countContentText } from './count-content.input'
import { countPiecesInput } from './count-pieces.input'
import { keepCounts } from './keep-counts'
import { lockBatch } from '../batches/lock-batch'
import { mustBeOpen } from '../trials/must-be-open'

/**
 * Counts how many pieces a batch made and how many of them are good, with what became of them, or counts again.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, stale, batch-not-begun, batch-not-baked.
 */
export const countPieces = command({
  name: 'shifts.count-pieces',
  input: countPiecesInput,
  right: 'log-reading',
  async run({ tx, actor, now, input }) {
    const batch = await lockBatch(tx, actor.bakeryId, input.batchId)
    mustBeOpen(batch.trial.state)
    if (batch.revision !== input.seenRevision) throw await staleRefusal(tx, actor, batch.id)
    if (batch.state === 'waiting') throw new Refusal('batch-not-begun')
    if (batch.state === 'not_baked') throw new Refusal('batch-not-baked')
    const entry = {
      id: uuid(),
      batchId: batch.id,
      made: input.piecesMade,
      good: input.piecesGood,
      sampled: input.sampled ?? null,
      sold: input.sold ?? null,
      given: input.given ?? null,
      wasted: input.wasted ?? null,
      takenAt: now.toISOString(),
    }
    const contentHash = hashOfText(countContentText(entry))
    const times = { at: now, clockAheadS: null, takenAt: now, receivedAt: now }
    const { bakeryId, personId } = actor
    await keepCounts(tx, bakeryId, [{ ...entry, ...times, bakeryId, personId, trialId: batch.trialId, contentHash }])
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

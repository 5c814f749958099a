import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { beginBatchInput } from './begin-batch.input'
import { lockBatch } from '../batches/lock-batch'
import { mixedBatches } from '../batches/mixed-batches'
import { mustBeOpen } from '../trials/must-be-open'
import { byTurn, needsCleanDown } from '../batches/rules'

/**
 * Begins a batch: from here on it is weighed out. The first one of a trial begins the trial's baking. The order was
 * drawn at random, so a batch that is begun before its turn needs a reason; the order as it was is kept beside it.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, stale, clean-down-first, before-its-turn.
 */
export const beginBatch = command({
  name: 'shifts.begin-batch',
  input: beginBatchInput,
  right: 'log-reading',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const batch = await lockBatch(tx, bakeryId, input.batchId, 'order')
    mustBeOpen(batch.trial.state)
    if (batch.state !== 'waiting' || batch.revision !== input.seenRevision)
      throw await staleRefusal(tx, actor, batch.id)
    const ofTrial = await mixedBatches(tx, bakeryId, batch.trialId)
    const own = ofTrial.find(({ id }) => id === batch.id)
    if (!own) throw new Refusal('not-found')
    const cleanDown = needsCleanDown(own, ofTrial)
    if (cleanDown && !input.cleanDownDone)
      throw new Refusal('clean-down-first', {}, [{ path: 'cleanDownDone', code: 'clean-down-needed', facts: {} }])
    const [skipped] = ofTrial.filter((other) => other.state === 'waiting' && byTurn(other, own) < 0).sort(byTurn)
    if (skipped && !input.swapWhy)
      throw new Refusal('before-its-turn', { code: skipped.code }, [{ path: 'swapWhy', code: 'missing', facts: {} }])
    const { count } = await tx.batch.updateMany({
      where: { bakeryId, id: batch.id, state: 'waiting', revision: input.seenRevision },
      data: {
        state: 'weighing',
        begunAt: now,
        movedFrom: 'waiting',
        movedAt: now,
        movedById: actor.personId,
        movedRevision: input.seenRevision + 1,
        revision: { increment: 1 },
      },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, batch.id)
    const { count: begins } = await tx.trial.updateMany({
      where: { bakeryId, id: batch.trialId, state: 'approved' },
      data: { state: 'baking', revision: { increment: 1 } },
    })
    return {
      value: { batchId: batch.id },
      audit: {
        target: batch.id,
        before: 'waiting',
        after: {
          state: 'weighing',
          batch: batch.code,
          cleanDown: cleanDown ? 'done' : 'not needed',
          trialBegins: begins === 1,
        },
        reason: skipped ? input.swapWhy : undefined,
      },
    }
  },
})

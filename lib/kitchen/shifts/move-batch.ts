import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { lockBatch } from './lock-batch'
import { moveBatchInput } from './move-batch.input'
import { mustBeOpen } from './must-be-open'
import { isOver, mayMove } from './rules'

/**
 * Moves a batch one step on, or takes it out as lost or set aside, with a reason. There is no way back: what was
 * wrong is said in a reading's correction or in the reason.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, stale, not-the-next-step.
 */
export const moveBatch = command({
  name: 'shifts.move-batch',
  input: moveBatchInput,
  right: 'log-reading',
  async run({ tx, actor, now, input }) {
    const batch = await lockBatch(tx, actor.bakeryId, input.batchId)
    mustBeOpen(batch.trial.state)
    if (batch.revision !== input.seenRevision) throw await staleRefusal(tx, actor, batch.id)
    if (!mayMove(batch.state, input.to)) throw new Refusal('not-the-next-step')
    const why = 'why' in input ? input.why : undefined
    const { count } = await tx.batch.updateMany({
      where: { bakeryId: actor.bakeryId, id: batch.id, state: batch.state, revision: input.seenRevision },
      data: { state: input.to, stateWhy: why ?? null, doneAt: isOver(input.to) ? now : null, revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, batch.id)
    return {
      value: { batchId: batch.id },
      audit: { target: batch.id, before: batch.state, after: { state: input.to, batch: batch.code }, reason: why },
      changed: ['shift', `batch:${batch.id}`, `trial:${batch.trialId}`],
    }
  },
})

import 'server-only'
import { command } from '../command'
import { isOutState } from '../conduct/is-out-state'
import { gapsForRecord } from '../readings/gaps-for-record'
import { gapsOfDough } from '../readings/gaps-of-trial'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { mustBeTakenOut } from './must-be-taken-out'
import { lockBatch } from '../batches/lock-batch'
import { moveBatchInput } from './move-batch.input'
import { mustBeOpen } from '../trials/must-be-open'
import { isOver, mayMove } from '../batches/rules'

/**
 * Moves a batch one step on, or takes it out as lost, set aside or not baked, with a reason; once what decides was read
 * of it, only for a cause that was noted before. A batch with readings that are missing, unsettled or odd is measured for
 * a reason only. Whoever moved it can undo that for a moment (`undo-move`).
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, stale, not-the-next-step, gaps-without-reason,
 * not-begun-not-lost, begun-so-baked, read-before-any-cause.
 */
export const moveBatch = command({
  name: 'shifts.move-batch',
  input: moveBatchInput,
  right: 'log-reading',
  async run({ tx, actor, now, input }) {
    const batch = await lockBatch(tx, actor.bakeryId, input.batchId)
    mustBeOpen(batch.trial.state)
    if (batch.revision !== input.seenRevision) throw await staleRefusal(tx, actor, batch.id)
    if (isOutState(input.to) && !isOver(batch.state)) await mustBeTakenOut(tx, actor.bakeryId, batch, input.to)
    if (!mayMove(batch.state, input.to)) throw new Refusal('not-the-next-step')
    const why = 'why' in input ? input.why : undefined
    const gaps = input.to === 'measured' ? await gapsOfDough(tx, actor.bakeryId, batch.trialId, batch.id) : []
    if (gaps.length > 0 && why === undefined)
      throw new Refusal('gaps-without-reason', { count: gaps.length }, [{ path: 'why', code: 'missing', facts: {} }])
    const { count } = await tx.batch.updateMany({
      where: { bakeryId: actor.bakeryId, id: batch.id, state: batch.state, revision: input.seenRevision },
      data: {
        state: input.to,
        stateWhy: why ?? null,
        doneAt: isOver(input.to) ? now : null,
        ...(input.to === 'baked' ? { bakedAt: now } : {}),
        movedFrom: batch.state,
        movedAt: now,
        movedById: actor.personId,
        movedRevision: input.seenRevision + 1,
        revision: { increment: 1 },
      },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, batch.id)
    return {
      value: { batchId: batch.id },
      audit: {
        target: batch.id,
        before: batch.state,
        after: { state: input.to, batch: batch.code, ...(gaps.length > 0 ? { gaps: gapsForRecord(gaps) } : {}) },
        reason: why,
      },
    }
  },
})

import 'server-only'
import type { Tx } from '../../db/client'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { lockBatch } from '../batches/lock-batch'
import { mustBeOpen } from '../trials/must-be-open'
import { whyNoUndo } from '../batches/rules'
import { undoMoveInput } from './undo-move.input'

/**
 * Takes the last move of a batch back: it goes where it came from, and a trial of which no dough is begun any more
 * waits again. Only whoever moved it, for ten seconds, and only while nothing was built on it: no count, no reading, no
 * weighing, no step, no dough baked again for it, and, where it left the waiting ones, no other dough begun. Both the move and its undoing stay in the record.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, stale, nothing-to-undo, undo-not-yours,
 * undo-too-late, undo-built-on.
 */
export const undoMove = command({
  name: 'shifts.undo-move',
  input: undoMoveInput,
  right: 'log-reading',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const batch = await lockBatch(tx, bakeryId, input.batchId, 'order')
    mustBeOpen(batch.trial.state)
    if (batch.revision !== input.seenRevision) throw await staleRefusal(tx, actor, batch.id)
    const { movedFrom, movedAt } = batch
    const fault = whyNoUndo({ batch, personId: actor.personId, now })
    if (fault) throw new Refusal(fault)
    if (!movedFrom || !movedAt) throw new Refusal('nothing-to-undo')
    if (await isBuiltOn(tx, bakeryId, { ...batch, movedFrom, movedAt })) throw new Refusal('undo-built-on')
    const { count } = await tx.batch.updateMany({
      where: { bakeryId, id: batch.id, state: batch.state, revision: input.seenRevision },
      data: {
        state: movedFrom,
        stateWhy: null,
        doneAt: null,
        ...(movedFrom === 'waiting' ? { begunAt: null } : {}),
        ...(batch.state === 'baked' ? { bakedAt: null } : {}),
        movedFrom: null,
        movedAt: null,
        movedById: null,
        movedRevision: null,
        revision: { increment: 1 },
      },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, batch.id)
    const begun = await tx.batch.count({ where: { bakeryId, trialId: batch.trialId, begunAt: { not: null } } })
    const { count: waits } =
      begun > 0
        ? { count: 0 }
        : await tx.trial.updateMany({
            where: { bakeryId, id: batch.trialId, state: 'baking' },
            data: { state: 'approved', revision: { increment: 1 } },
          })
    return {
      value: { batchId: batch.id },
      audit: {
        target: batch.id,
        before: batch.state,
        after: { state: movedFrom, batch: batch.code, trialWaits: waits === 1 },
      },
    }
  },
})

type Moved = { id: string; trialId: string; movedFrom: string; movedAt: Date }

async function isBuiltOn(tx: Tx, bakeryId: string, { id, trialId, movedFrom, movedAt }: Moved): Promise<boolean> {
  const leftWaiting = movedFrom === 'waiting'
  // Nobody gets a dough twice: neither beside the one that was baked for it, nor beside a whole day that was added for its own.
  const repairs = await tx.repair.count({
    where: {
      bakeryId,
      trialId,
      OR: [
        { kind: 'bake_again', batchId: id },
        { kind: 'add_day', at: { gte: movedAt }, day: { batches: { some: { id } } } },
      ],
    },
  })
  if (repairs > 0) return true
  // A dough that waits has no readings, weighings and steps at all; at another state only those that came after the move count.
  const where = { bakeryId, trialId, batchId: id, ...(leftWaiting ? {} : { receivedAt: { gte: movedAt } }) }
  const written =
    (await tx.reading.count({ where })) + (await tx.weighing.count({ where })) + (await tx.step.count({ where }))
  if (written > 0 || !leftWaiting) return written > 0
  // What was begun after it was judged by it: whose turn it was, and whether to clean down.
  return (await tx.batch.count({ where: { bakeryId, trialId, id: { not: id }, begunAt: { gte: movedAt } } })) > 0
}

import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { lockBatch } from '../batches/lock-batch'
import { mustBeOpen } from '../trials/must-be-open'
import { mayBeFoundOut } from './may-be-found-out'
import { noteFoundCauseInput } from './note-found-cause.input'

/**
 * Notes by what it was found later that something was wrong with a batch, while its trial is open: the tub of salt that
 * is full, the crumb that tastes of none, the stock. It takes nothing out before a second person signs it.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, batch-not-begun, batch-not-baked, not-the-next-step.
 */
export const noteFoundCause = command({
  name: 'shifts.note-found-cause',
  input: noteFoundCauseInput,
  right: 'log-reading',
  async run({ tx, actor, now, input: { batchId, object, what } }) {
    const { bakeryId, personId } = actor
    const batch = await lockBatch(tx, bakeryId, batchId)
    mustBeOpen(batch.trial.state)
    mayBeFoundOut(batch.state)
    const id = uuid()
    await tx.foundCause.create({
      data: { bakeryId, id, trialId: batch.trialId, batchId: batch.id, object, what, foundById: personId, at: now },
    })
    return {
      value: { foundCauseId: id },
      audit: { target: batch.id, after: { batch: batch.code, foundBy: object, what } },
    }
  },
})

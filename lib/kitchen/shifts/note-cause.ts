import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { lockBatch } from '../batches/lock-batch'
import { mustBeOpen } from '../trials/must-be-open'
import { noteCauseInput } from './note-cause.input'

/**
 * Notes at a batch what happened to it, when that was noticed and by whom, at any time while its trial is open. It takes
 * nothing out; what is noted before the deciding measure is read is what a batch may be taken out for afterwards.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped.
 */
export const noteCause = command({
  name: 'shifts.note-cause',
  input: noteCauseInput,
  right: 'log-reading',
  async run({ tx, actor, now, input: { batchId, what, noticedMinAgo } }) {
    const { bakeryId, personId } = actor
    const batch = await lockBatch(tx, bakeryId, batchId)
    mustBeOpen(batch.trial.state)
    const noticedAt = new Date(now.getTime() - noticedMinAgo * 60_000)
    const id = uuid()
    await tx.batchCause.create({
      data: { bakeryId, id, trialId: batch.trialId, batchId: batch.id, what, noticedAt, personId, at: now },
    })
    return {
      value: { causeId: id },
      audit: { target: batch.id, after: { batch: batch.code, what, noticedAt: noticedAt.toISOString() } },
    }
  },
})

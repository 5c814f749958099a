import 'server-only'
import { command } from '../command'
import { staleRefusal } from '../stale'
import { lockTrial } from './lock-trial'
import { stopTrialInput } from './stop-trial.input'

/**
 * Calls off a trial that is approved and of which no dough is begun, for a reason. One that is being baked ends with its
 * result (`evidence.close-trial`). Refuses: not-found, stale.
 */
export const stopTrial = command({
  name: 'trials.stop-trial',
  input: stopTrialInput,
  right: 'approve-plan',
  async run({ tx, actor, now, input: { trialId, seenRevision, reason } }) {
    const { bakeryId } = actor
    await lockTrial(tx, bakeryId, trialId)
    const { count } = await tx.trial.updateMany({
      where: { bakeryId, id: trialId, state: 'approved', revision: seenRevision },
      data: { state: 'stopped', closedAt: now, closedWhy: reason, revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, trialId)
    return { value: null, audit: { target: trialId, before: 'approved', after: 'stopped', reason } }
  },
})

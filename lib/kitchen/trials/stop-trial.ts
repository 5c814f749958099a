import 'server-only'
import { command } from '../command'
import { staleRefusal } from '../stale'
import { lockTrial } from './lock-trial'
import { mayFollow } from './rules'
import { stopTrialInput } from './stop-trial.input'

/** Ends a trial that is approved or baking, for a reason. What was read stays. Refuses: not-found, stale. */
export const stopTrial = command({
  name: 'trials.stop-trial',
  input: stopTrialInput,
  right: 'approve-plan',
  async run({ tx, actor, now, input: { trialId, seenRevision, reason } }) {
    const { bakeryId } = actor
    const trial = await lockTrial(tx, bakeryId, trialId)
    if (!mayFollow(trial.state, 'stopped')) throw await staleRefusal(tx, actor, trialId)
    const { count } = await tx.trial.updateMany({
      where: { bakeryId, id: trialId, state: trial.state, revision: seenRevision },
      data: { state: 'stopped', closedAt: now, closedWhy: reason, revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, trialId)
    return { value: null, audit: { target: trialId, before: trial.state, after: 'stopped', reason }, changed: ['trials', `trial:${trialId}`] }
  },
})

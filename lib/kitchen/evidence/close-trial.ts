import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { lockTrial } from '../trials/lock-trial'
import { closeTrialInput } from './close-trial.input'

/**
 * Ends the baking of a trial, so that its result stands. With doughs still open it only ends early, with a reason, and
 * is then 'stopped': an indication. Refuses: not-found, doughs-open, stale; reason missing.
 */
export const closeTrial = command({
  name: 'evidence.close-trial',
  input: closeTrialInput,
  right: 'approve-plan',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const key = { bakeryId, id: input.trialId }
    const trial = await lockTrial(tx, bakeryId, input.trialId)
    if (input.early && input.reason === '') throw Refusal.at('reason', 'missing')
    const open = await tx.batch.count({
      where: { bakeryId, trialId: input.trialId, kind: 'dough', state: { in: ['waiting', 'weighing', 'in_work', 'baked'] } },
    })
    if (trial.state === 'baking' && open > 0 && !input.early) throw new Refusal('doughs-open', { count: open })
    const state = input.early && open > 0 ? 'stopped' : 'closed'
    const { count } = await tx.trial.updateMany({
      where: { ...key, state: 'baking', revision: input.seenRevision },
      data: { state, closedAt: now, closedWhy: input.reason === '' ? null : input.reason, revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, input.trialId)
    return {
      value: { state },
      audit: { target: input.trialId, before: trial.state, after: state, ...(input.reason === '' ? {} : { reason: input.reason }) },
      changed: ['trials', `trial:${input.trialId}`],
    }
  },
})

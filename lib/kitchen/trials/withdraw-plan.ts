import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { lockTrial } from './lock-trial'
import { withdrawalBar } from './rules'
import { withdrawPlanInput } from './withdraw-plan.input'
import { removePlan } from './write-content'

/**
 * Takes a proposed plan back before it is decided on: it is a draft again, and its order and codes are gone. Only who
 * proposed it may. Refuses: not-found, stale, not-your-proposal.
 */
export const withdrawPlan = command({
  name: 'trials.withdraw-plan',
  input: withdrawPlanInput,
  right: 'propose-trial',
  async run({ tx, actor, input: { trialId, seenRevision } }) {
    const { bakeryId, personId } = actor
    const trial = await lockTrial(tx, bakeryId, trialId)
    if (trial.state !== 'proposed' || trial.revision !== seenRevision) throw await staleRefusal(tx, actor, trialId)
    const bar = withdrawalBar({ personId, proposedById: trial.proposedById })
    if (bar) throw new Refusal(bar)
    await removePlan(tx, bakeryId, trialId)
    const { count } = await tx.trial.updateMany({
      where: { bakeryId, id: trialId, state: 'proposed', revision: seenRevision },
      data: { state: 'draft', planText: null, planHash: null, proposedAt: null, revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, trialId)
    return {
      value: { revision: seenRevision + 1 },
      audit: { target: trialId, before: { state: 'proposed', plan: trial.planHash }, after: 'draft' },
    }
  },
})

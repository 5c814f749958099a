import 'server-only'
import { v7 as uuid } from 'uuid'
import { wordsIn } from '../../words/words'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { decidePlanInput } from './decide-plan.input'
import { handsOfPlan } from './hands-of-plan'
import { lockTrial } from './lock-trial'
import { decisionBar, handIn, mayFollow, meaningOfDecision, stateAfter } from './rules'
import { removePlan } from './write-content'

/**
 * Approves a proposed plan and freezes it, sends it back with a note, or declines it. The decision is bound to the
 * hash of the plan that was seen. Nobody decides on what they proposed or wrote, as long as somebody else can;
 * otherwise the record says 'approved by a co-author', or, where the bakery lets somebody work alone, 'by its proposer'.
 * Refuses: not-found, stale, plan-moved-on, own-plan, co-author, wrong-password.
 */
export const decidePlan = command({
  name: 'trials.decide-plan',
  input: decidePlanInput,
  right: 'approve-plan',
  askPassword: true,
  async run({ tx, actor, now, language, input }) {
    const { bakeryId, personId } = actor
    const { trialId, verdict, note } = input
    const trial = await lockTrial(tx, bakeryId, trialId)
    const state = stateAfter(verdict)
    if (!mayFollow(trial.state, state) || trial.state !== 'proposed' || trial.revision !== input.seenRevision)
      throw await staleRefusal(tx, actor, trialId)
    if (trial.planHash !== input.planHash) throw new Refusal('plan-moved-on')
    const hands = await handsOfPlan(tx, bakeryId, trialId)
    const bar = decisionBar({ personId, ...hands })
    if (bar) throw new Refusal(bar)

    const { byProposer, byCoAuthor } = handIn({ personId, ...hands })
    const meaning = wordsIn(language).trials.meanings[meaningOfDecision({ verdict, byProposer, byCoAuthor })]
    await tx.planDecision.create({
      data: {
        bakeryId,
        id: uuid(),
        trialId,
        verdict,
        personId,
        personName: actor.name,
        role: actor.role,
        meaning,
        note,
        planHash: input.planHash,
        byProposer,
        byCoAuthor,
        at: now,
      },
    })
    if (state === 'draft') await removePlan(tx, bakeryId, trialId)
    const { count } = await tx.trial.updateMany({
      where: { bakeryId, id: trialId, state: 'proposed', revision: input.seenRevision },
      data: {
        state,
        revision: { increment: 1 },
        ...(state === 'draft' ? { planText: null, planHash: null, proposedAt: null } : {}),
        ...(state === 'declined' ? { closedAt: now, closedWhy: note } : {}),
      },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, trialId)
    return {
      value: { state },
      audit: {
        target: trialId,
        before: 'proposed',
        after: { state, plan: input.planHash, meaning, byProposer, byCoAuthor },
        reason: note || undefined,
      },
    }
  },
})

import 'server-only'
import { command } from '../command'
import { isOutState } from '../conduct/is-out-state'
import { Refusal } from '../refusal'
import { closedForAmending } from './closed-for-amending'
import { keepProposal } from './keep-proposal'
import { mustNotBeProposed } from './must-not-be-proposed'
import { proposeNotCountingInput } from './propose-not-counting.input'

/**
 * Proposes that a dough of a closed trial should not count, for a reason. It changes nothing: a second person decides on
 * it, and the first result goes on counting the dough.
 * Refuses: not-found, readings-not-closed, nothing-sealed, seal-broken, amendments-broken, dough-out-already,
 * amendment-waits-already; reason missing.
 */
export const proposeNotCounting = command({
  name: 'amendments.propose-not-counting',
  input: proposeNotCountingInput,
  right: 'propose-amendment',
  async run({ tx, actor, now, input: { trialId, doughId, reason } }) {
    const { bakeryId, personId, name } = actor
    const { hash, closing, amendments, standing } = await closedForAmending(tx, bakeryId, trialId)
    const dough = closing.doughs.find(({ id }) => id === doughId)
    const stands = standing.doughs.find(({ id }) => id === doughId)
    if (!dough || !stands) throw new Refusal('not-found')
    if (isOutState(stands.state)) throw new Refusal('dough-out-already')
    await mustNotBeProposed(
      tx,
      bakeryId,
      amendments.all,
      (change) => change.kind === 'not-counted' && change.dough.id === doughId,
    )
    const proposal = await keepProposal(tx, {
      bakeryId,
      trialId,
      closing: hash,
      change: { kind: 'not-counted', dough: { id: dough.id, code: dough.code }, old: dough.state },
      reason,
      by: { id: personId, name },
      at: now,
      entry: null,
    })
    return {
      value: { amendmentId: proposal.amendment },
      audit: {
        target: trialId,
        before: dough.state,
        after: { ...proposal, dough: dough.code, counts: false },
        reason,
      },
    }
  },
})

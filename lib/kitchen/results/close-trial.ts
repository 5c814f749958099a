import 'server-only'
import { command } from '../command'
import { gapsForRecord } from '../readings/gaps-for-record'
import { gapsOfTrial } from '../readings/gaps-of-trial'
import { Refusal } from '../refusal'
import { unfinishedStates } from '../batches/rules'
import { staleRefusal } from '../stale'
import { lockTrial } from '../trials/lock-trial'
import { closeTrialInput } from './close-trial.input'
import { sealTrial } from './seal-trial'

/**
 * Closes the readings of a trial: everything that was declared, baked and read is sealed, its result rests on that for
 * good, and from then on everybody sees the comparison. With doughs still open it only ends early, with a reason, and is
 * then 'stopped': an indication. With something missing, unsettled or odd about a measured dough it closes for a reason
 * only, and the record lists it. Refuses: not-found, doughs-open, gaps-without-reason, not-as-planned, stale; reason missing.
 */
export const closeTrial = command({
  name: 'results.close-trial',
  input: closeTrialInput,
  right: 'approve-plan',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const key = { bakeryId, id: input.trialId }
    const trial = await lockTrial(tx, bakeryId, input.trialId)
    if (input.early && input.reason === '') throw Refusal.at('reason', 'missing')
    if (trial.state !== 'baking' || trial.revision !== input.seenRevision)
      throw await staleRefusal(tx, actor, input.trialId)
    const open = await tx.batch.count({
      where: { bakeryId, trialId: input.trialId, kind: 'dough', state: { in: unfinishedStates } },
    })
    if (open > 0 && !input.early) throw new Refusal('doughs-open', { count: open })
    const gaps = await gapsOfTrial(tx, bakeryId, input.trialId)
    const gapCount = gaps.reduce((sum, each) => sum + each.gaps.length, 0)
    if (gapCount > 0 && input.reason === '') {
      throw new Refusal('gaps-without-reason', { count: gapCount }, [{ path: 'reason', code: 'missing', facts: {} }])
    }
    const why = input.reason === '' ? null : input.reason
    const state = input.early && open > 0 ? 'stopped' : 'closed'
    const { count } = await tx.trial.updateMany({
      where: { ...key, state: 'baking', revision: input.seenRevision },
      data: { state, closedAt: now, closedWhy: why, revision: { increment: 1 } },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, input.trialId)
    const closing = await sealTrial(tx, actor, input.trialId, { at: now, state, why })
    return {
      value: { state },
      audit: {
        target: input.trialId,
        before: trial.state,
        after: {
          state,
          closing,
          ...(gapCount > 0 && {
            gaps: gaps.map(({ code, gaps: ofDough }) => ({ dough: code, gaps: gapsForRecord(ofDough) })),
          }),
        },
        ...(input.reason === '' ? {} : { reason: input.reason }),
      },
    }
  },
})

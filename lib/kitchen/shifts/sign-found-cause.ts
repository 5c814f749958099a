import 'server-only'
import { command } from '../command'
import { lockBatch } from '../batches/lock-batch'
import { signsFoundCause } from '../conduct/signs-found-cause'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { mustBeOpen } from '../trials/must-be-open'
import { mayBeFoundOut } from './may-be-found-out'
import { signFoundCauseInput } from './sign-found-cause.input'

/**
 * A second person saw by what it was found that something was wrong with a batch, and signs it: the batch is set aside,
 * also where what decides was read of it, and stays so. What was read stays visible, and the headline of the result takes
 * the less favourable of with and without it. Who is alone in the bakery signs alone, which is told.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, stale, own-found-cause, not-the-next-step.
 */
export const signFoundCause = command({
  name: 'shifts.sign-found-cause',
  input: signFoundCauseInput,
  right: 'log-reading',
  async run({ tx, actor, now, input: { foundCauseId, seenRevision } }) {
    const { bakeryId, personId } = actor
    const cause = await tx.foundCause.findUnique({
      where: { bakeryId_id: { bakeryId, id: foundCauseId } },
      select: { batchId: true, object: true, what: true, foundById: true },
    })
    if (!cause) throw new Refusal('not-found')
    const batch = await lockBatch(tx, bakeryId, cause.batchId)
    mustBeOpen(batch.trial.state)
    if (batch.revision !== seenRevision) throw await staleRefusal(tx, actor, batch.id)
    mayBeFoundOut(batch.state)
    const people = await tx.person.findMany({ where: { bakeryId, endedAt: null }, select: { id: true } })
    const signs = signsFoundCause({ personId, foundById: cause.foundById, people: people.map(({ id }) => id) })
    if ('bar' in signs) throw new Refusal(signs.bar)
    await tx.foundCauseSignature.create({
      data: {
        bakeryId,
        foundCauseId,
        foundById: cause.foundById,
        signsAs: signs.as,
        signedById: personId,
        at: now,
      },
    })
    const { count } = await tx.batch.updateMany({
      where: { bakeryId, id: batch.id, state: batch.state, revision: seenRevision },
      // Nobody takes back alone what two have signed.
      data: {
        state: 'set_aside',
        stateWhy: cause.what,
        doneAt: now,
        movedFrom: null,
        movedAt: null,
        movedById: null,
        movedRevision: null,
        revision: { increment: 1 },
      },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, batch.id)
    return {
      value: { batchId: batch.id },
      audit: {
        target: batch.id,
        before: batch.state,
        after: { state: 'set_aside', batch: batch.code, foundCause: foundCauseId, foundBy: cause.object, as: signs.as },
        reason: cause.what,
      },
    }
  },
})

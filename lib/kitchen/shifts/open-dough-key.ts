import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { isFrozen, isKeyOpen } from '../trials/rules'
import { openDoughKeyInput } from './open-dough-key.input'

/**
 * Opens the key of one dough to whoever asks, to weigh it out or in an emergency: what it is and what is in it. Nobody
 * on the shift is refused, whatever became of the dough; it stands in the record that they know it. Refuses: not-found.
 */
export const openDoughKey = command({
  name: 'shifts.open-dough-key',
  input: openDoughKeyInput,
  right: 'read-shift',
  async run({ tx, actor, now, input: { batchId } }) {
    const { bakeryId, personId } = actor
    const batch = await tx.batch.findUnique({
      where: { bakeryId_id: { bakeryId, id: batchId } },
      select: { code: true, trialId: true, trial: { select: { state: true } } },
    })
    if (!batch || !isFrozen(batch.trial.state)) throw new Refusal('not-found')
    const value = { batchId }
    if (isKeyOpen(batch.trial.state)) return { value, audit: null }
    const { count } = await tx.openedDoughKey.createMany({
      data: { bakeryId, trialId: batch.trialId, batchId, personId, at: now },
      skipDuplicates: true,
    })
    return { value, audit: count === 0 ? null : { target: batchId, after: { knowsDough: batch.code } } }
  },
})

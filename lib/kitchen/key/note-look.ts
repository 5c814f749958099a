import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { addLook } from './add-look'
import { noteLookInput } from './note-look.input'

/**
 * Notes that a person looked at the key, the result or the evidence of a trial: in the record once a day of the
 * bakery's, however often they look. Refuses: not-found.
 */
export const noteLook = command({
  name: 'key.note-look',
  input: noteLookInput,
  right: 'read-work',
  async run({ tx, actor, now, input: { trialId, what } }) {
    const { bakeryId, personId } = actor
    const trial = await tx.trial.findUnique({
      where: { bakeryId_id: { bakeryId, id: trialId } },
      select: { bakery: { select: { timeZone: true } } },
    })
    if (!trial) throw new Refusal('not-found')
    const { timeZone } = trial.bakery
    const isFirst = await addLook(tx, { bakeryId, trialId, personId, what, timeZone, now })
    return { value: { isFirst, timeZone }, audit: isFirst ? { target: trialId, after: { lookedAt: what } } : null }
  },
})

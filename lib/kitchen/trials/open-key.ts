import 'server-only'
import { command } from '../command'
import { addLook } from '../key/add-look'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { openKeyInput } from './open-key.input'
import { isKeyOpen } from './rules'

/**
 * Opens the key of a trial's plan to whoever asks: from then on they see the weigh-out sheets, and it stands in the
 * record that they know which dough each code stands for. Nothing is kept twice, nor where the key is open to all.
 * Refuses: not-found, stale.
 */
export const openKey = command({
  name: 'trials.open-key',
  input: openKeyInput,
  right: 'read-work',
  async run({ tx, actor, now, input: { trialId, planHash } }) {
    const { bakeryId, personId } = actor
    // Held, so that the plan is not drawn up anew meanwhile.
    await tx.$queryRaw`SELECT 1 FROM trial WHERE bakery_id = ${bakeryId}::uuid AND id = ${trialId}::uuid FOR SHARE`
    const trial = await tx.trial.findUnique({
      where: { bakeryId_id: { bakeryId, id: trialId } },
      select: { state: true, planHash: true, bakery: { select: { timeZone: true } } },
    })
    if (!trial) throw new Refusal('not-found')
    if (trial.planHash !== planHash) throw await staleRefusal(tx, actor, trialId)
    const value = { trialId }
    if (isKeyOpen(trial.state)) return { value, audit: null }
    const { count } = await tx.openedKey.createMany({
      data: { bakeryId, trialId, planHash, personId, at: now },
      skipDuplicates: true,
    })
    if (count === 0) return { value, audit: null }
    // The sheets come next, and this entry says it for the day.
    await addLook(tx, { bakeryId, trialId, personId, what: 'key', timeZone: trial.bakery.timeZone, now })
    return { value, audit: { target: trialId, after: { knowsKey: true, plan: planHash } } }
  },
})

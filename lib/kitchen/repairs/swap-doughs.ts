import 'server-only'
import { lockBatch } from '../batches/lock-batch'
import { mixedBatches } from '../batches/mixed-batches'
import { command } from '../command'
import { whyNotExchanged } from '../conduct/why-not-exchanged'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { mustBeOpen } from '../trials/must-be-open'
import { keepRepair } from './keep-repair'
import { swapDoughsInput } from './swap-doughs.input'

/**
 * Two doughs of a mixing day that both wait exchange their places, for a reason. The planned place stays with each, so
 * that what was drawn and what was kept are both known; where to clean down follows from what comes before what.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, not-of-one-day, exchange-of-waiting, stale.
 */
export const swapDoughs = command({
  name: 'repairs.swap-doughs',
  input: swapDoughsInput,
  right: 'log-reading',
  async run({ tx, actor, now, input: { batchId, seenTurn, otherId, why } }) {
    const { bakeryId, personId } = actor
    const { trialId, trial } = await lockBatch(tx, bakeryId, batchId, 'order')
    mustBeOpen(trial.state)
    await tx.$queryRaw`SELECT 1 FROM batch WHERE bakery_id = ${bakeryId}::uuid AND id = ${otherId}::uuid FOR UPDATE`
    const ofTrial = await mixedBatches(tx, bakeryId, trialId)
    const [one, other] = [batchId, otherId].map((id) => ofTrial.find((batch) => batch.id === id))
    if (!one || !other) throw new Refusal('not-found')
    const fault = whyNotExchanged(one, other)
    if (fault) throw new Refusal(fault)
    if (one.turn !== seenTurn) throw await staleRefusal(tx, actor, batchId)
    await keepRepair(tx, { bakeryId, trialId, kind: 'swap', batchId, otherBatchId: otherId, why, personId, at: now })
    return {
      value: { batchId },
      audit: {
        target: batchId,
        before: { [one.code]: one.turn, [other.code]: other.turn },
        after: { [one.code]: other.turn, [other.code]: one.turn },
        reason: why,
      },
    }
  },
})

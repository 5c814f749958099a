import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Tx } from '../../db/client'
import { lockBatch } from '../batches/lock-batch'
import { mixedBatches } from '../batches/mixed-batches'
import { byTurn } from '../batches/rules'
import { command } from '../command'
import { whyNotBakedAgain } from '../conduct/why-not-baked-again'
import { Refusal } from '../refusal'
import { sureOf } from '../sure-of'
import { mustBeOpen } from '../trials/must-be-open'
import { bakeAgainInput } from './bake-again.input'
import { keepRepair } from './keep-repair'
import { lossesOfTrial } from './losses-of-trial'
import { nextCodes } from './next-codes'
import { orderOfTrial } from './order-of-trial'

/**
 * Bakes a dough again that was lost, set aside or not baked, in its own mixing day, once: another one of the same kind,
 * under the next code of the plan's draw, last in the day. It needs no new approval, because no more doughs of a kind are
 * compared than planned. Whoever knows what the first one is knows it of this one, and the record of keys says so.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, not-out, baked-again-already, day-added-for,
 * mixing-day-over, codes-used-up, unknown-format, damaged-text.
 */
export const bakeAgain = command({
  name: 'repairs.bake-again',
  input: bakeAgainInput,
  right: 'log-reading',
  async run({ tx, actor, now, input: { batchId } }) {
    const { bakeryId, personId } = actor
    const { trialId, code, state, trial, mixingDay } = await lockBatch(tx, bakeryId, batchId, 'order')
    mustBeOpen(trial.state)
    const { doughs } = await lossesOfTrial(tx, { bakeryId, trialId, now })
    const loss = doughs.find(({ id }) => id === batchId)
    const fault = loss
      ? loss.whyNot
      : whyNotBakedAgain({ state, isBakedAgain: false, isDayOver: false, isDayAddedFor: false })
    if (fault) throw new Refusal(fault, { code, day: mixingDay.number, again: loss?.again?.code ?? '' })
    const { seed } = (await orderOfTrial(tx, bakeryId, trialId)).order
    const ofTrial = await mixedBatches(tx, bakeryId, trialId)
    const [newCode] = nextCodes({ seed, used: ofTrial.map((each) => each.code), count: 1 }) ?? []
    if (newCode === undefined) throw new Refusal('codes-used-up')
    const otherBatchId = uuid()
    await tx.batch.create({
      data: { bakeryId, id: otherBatchId, ...(await asBefore(tx, bakeryId, batchId, ofTrial)), code: newCode },
    })
    await tx.openedDoughKey.createMany({
      data: (await tx.openedDoughKey.findMany({ where: { bakeryId, batchId }, select: { personId: true } })).map(
        (knower) => ({ bakeryId, trialId, batchId: otherBatchId, personId: knower.personId, at: now }),
      ),
    })
    await keepRepair(tx, { bakeryId, trialId, kind: 'bake_again', batchId, otherBatchId, personId, at: now })
    return {
      value: { batchId: otherBatchId, code: newCode },
      audit: { target: batchId, before: state, after: { batch: code, again: newCode, day: mixingDay.number } },
    }
  },
})

/** A dough of the same kind and mixing day, last in it, with what to clean down from by what comes before it there. */
async function asBefore(tx: Tx, bakeryId: string, batchId: string, ofTrial: Awaited<ReturnType<typeof mixedBatches>>) {
  const { trialId, kind, armId, mixingDayId } = await tx.batch.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId, id: batchId } },
    select: { trialId: true, kind: true, armId: true, mixingDayId: true },
  })
  const own = sureOf(
    ofTrial.find(({ id }) => id === batchId),
    'the dough that is baked again',
  )
  const ofDay = ofTrial.filter(({ dayNumber }) => dayNumber === own.dayNumber).sort(byTurn)
  return {
    trialId,
    kind,
    armId,
    mixingDayId,
    plannedOrder: Math.max(...ofDay.map(({ plannedOrder }) => plannedOrder)) + 1,
    cleanDownBefore: ofDay.at(-1)?.adds.some((each) => !own.leaves.includes(each)) ?? false,
    state: 'waiting' as const,
    revision: 1,
  }
}

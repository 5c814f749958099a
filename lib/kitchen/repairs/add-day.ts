import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { Refusal } from '../refusal'
import { sureOf } from '../sure-of'
import { lockTrial } from '../trials/lock-trial'
import { mustBeOpen } from '../trials/must-be-open'
import { addDayInput } from './add-day.input'
import { keepRepair } from './keep-repair'
import { lossesOfTrial } from './losses-of-trial'
import { nextCodes } from './next-codes'
import { orderOfAddedDay } from './order-of-added-day'
import { orderOfTrial } from './order-of-trial'

/**
 * Adds a whole mixing day, without a date, for one that is short of doughs: every dough as often as planned, in the order
 * and under the codes that the plan's draw has next. What was baked on the short day stays and counts as it did; its
 * missing doughs are not baked again. It needs no new approval.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, day-whole, day-added-for, codes-used-up,
 * unknown-format, damaged-text.
 */
export const addDay = command({
  name: 'repairs.add-day',
  input: addDayInput,
  right: 'approve-plan',
  async run({ tx, actor, now, input: { trialId, number } }) {
    const { bakeryId, personId } = actor
    const trial = await lockTrial(tx, bakeryId, trialId)
    mustBeOpen(trial.state)
    const { days } = await lossesOfTrial(tx, { bakeryId, trialId, now })
    const short = days.find((day) => day.number === number)
    if (!short) throw new Refusal('not-found')
    if (short.whyNot) throw new Refusal(short.whyNot, { day: number })
    const plan = await orderOfTrial(tx, bakeryId, trialId)
    const otherNumber = Math.max(...days.map((day) => day.number)) + 1
    const [doughs, ofTrial, arms] = [
      orderOfAddedDay(plan, otherNumber),
      await tx.batch.findMany({ where: { bakeryId, trialId }, select: { code: true } }),
      await tx.arm.findMany({ where: { bakeryId, trialId }, select: { id: true, position: true } }),
    ]
    const codes =
      doughs && nextCodes({ seed: plan.order.seed, used: ofTrial.map(({ code }) => code), count: doughs.length })
    if (!codes) throw new Refusal('codes-used-up')
    const armIds = new Map(arms.map(({ id, position }) => [position, id]))
    const { id: dayId } = await tx.mixingDay.findUniqueOrThrow({
      where: { bakeryId_trialId_number: { bakeryId, trialId, number } },
      select: { id: true },
    })
    const otherDayId = uuid()
    await tx.mixingDay.create({ data: { bakeryId, id: otherDayId, trialId, number: otherNumber } })
    await tx.batch.createMany({
      data: doughs.map(({ arm, place, cleanDownOf }, i) => ({
        bakeryId,
        id: uuid(),
        trialId,
        kind: 'dough',
        armId: sureOf(armIds.get(arm), 'a dough of the plan'),
        mixingDayId: otherDayId,
        plannedOrder: place,
        code: sureOf(codes[i], 'a code'),
        cleanDownBefore: cleanDownOf.length > 0,
        state: 'waiting',
        revision: 1,
      })),
    })
    await keepRepair(tx, { bakeryId, trialId, kind: 'add_day', dayId, otherDayId, personId, at: now })
    return {
      value: { number: otherNumber },
      audit: { target: trialId, after: { day: number, added: otherNumber, doughs: codes.length } },
    }
  },
})

import 'server-only'
import type { Tx } from '../../db/client'
import { command } from '../command'
import { dateOfDay, dayOfDate } from '../day-of-date'
import { Refusal } from '../refusal'
import { mustBeOpen } from './must-be-open'
import { staleRefusal } from '../stale'
import { dateMixingDaysInput } from './date-mixing-days.input'
import { lockTrial } from './lock-trial'

/**
 * Says when the mixing days of an approved trial are to be, or takes a date back. A date is no part of the plan, so it
 * needs no new approval; a day of which a dough is begun has its date from that.
 * Refuses: not-found, trial-not-approved, trial-closed, trial-stopped, day-begun, stale.
 */
export const dateMixingDays = command({
  name: 'trials.date-mixing-days',
  input: dateMixingDaysInput,
  right: 'approve-plan',
  async run({ tx, actor, input: { trialId, days } }) {
    const { bakeryId } = actor
    const trial = await lockTrial(tx, bakeryId, trialId)
    mustBeOpen(trial.state)
    const changes = days.filter(({ seen, day }) => seen !== day)
    for (const { number, seen, day } of changes) {
      const present = await mustBeUnbegun(tx, bakeryId, trialId, number)
      if (dayOfDate(present.day) !== seen) throw await staleRefusal(tx, actor, trialId)
      await tx.mixingDay.update({
        where: { bakeryId_id: { bakeryId, id: present.id } },
        data: { day: day === null ? null : dateOfDay(day) },
      })
    }
    return {
      value: null,
      audit: {
        target: trialId,
        before: Object.fromEntries(changes.map(({ number, seen }) => [number, seen])),
        after: Object.fromEntries(changes.map(({ number, day }) => [number, day])),
      },
    }
  },
})

async function mustBeUnbegun(tx: Tx, bakeryId: string, trialId: string, number: number) {
  const day = await tx.mixingDay.findUnique({
    where: { bakeryId_trialId_number: { bakeryId, trialId, number } },
    select: { id: true, day: true, batches: { where: { begunAt: { not: null } }, select: { id: true }, take: 1 } },
  })
  if (!day) throw new Refusal('not-found')
  if (day.batches.length > 0) throw new Refusal('day-begun', { day: number })
  return day
}

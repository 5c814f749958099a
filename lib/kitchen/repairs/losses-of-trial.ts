import 'server-only'
import type { Db, Tx } from '../../db/client'
import { bakeryDay } from '../bakery-day'
import { isDayOver } from '../conduct/is-day-over'
import { isOutState } from '../conduct/is-out-state'
import type { OutState } from '../conduct/out-state.input'
import { whyNoDayAdded } from '../conduct/why-no-day-added'
import { whyNotBakedAgain } from '../conduct/why-not-baked-again'
import { dayOfDate } from '../day-of-date'

export type LostDough = {
  id: string
  code: string
  state: OutState
  day: number
  /** When it went out. */
  outAt: Date | null
  /** The dough that was made for it. */
  again: { id: string; code: string } | null
  /** Why it cannot be baked again; null when it can. */
  whyNot: ReturnType<typeof whyNotBakedAgain>
  /** When it is baked again: today, on its mixing day, which has no date yet, or on the date of that. */
  when: 'today' | 'its-day' | { date: string }
}

export type DayLoss = {
  number: number
  /** How many of its doughs are out and not baked again. */
  short: number
  /** Number of the mixing day that was added for it. */
  addedAs: number | null
  /** Why no day can be added for it; null when one can. */
  whyNot: ReturnType<typeof whyNoDayAdded>
}

/** The doughs of a trial that are out, with what can still be done about each, and its mixing days, by their codes and numbers. */
export async function lossesOfTrial(
  from: Db | Tx,
  q: { bakeryId: string; trialId: string; now: Date },
): Promise<{ doughs: LostDough[]; days: DayLoss[] }> {
  const { bakeryId, trialId, now } = q
  const [clock, days, repairs] = await Promise.all([
    from.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { timeZone: true, dayTurnsAtH: true } }),
    from.mixingDay.findMany({
      where: { bakeryId, trialId },
      orderBy: { number: 'asc' },
      select: {
        id: true,
        number: true,
        day: true,
        batches: {
          orderBy: { plannedOrder: 'asc' },
          select: { id: true, code: true, state: true, begunAt: true, doneAt: true },
        },
      },
    }),
    from.repair.findMany({
      where: { bakeryId, trialId, kind: { in: ['bake_again', 'add_day'] } },
      select: {
        batchId: true,
        dayId: true,
        otherBatch: { select: { id: true, code: true } },
        otherDay: { select: { number: true } },
      },
    }),
  ])
  const today = bakeryDay(now, clock)
  const bakedAgain = new Map(repairs.map(({ batchId, otherBatch }) => [batchId, otherBatch]))
  const addedFor = new Map(repairs.map(({ dayId, otherDay }) => [dayId, otherDay?.number ?? null]))
  const perDay = days.map(({ id: dayId, number, day, batches }) => {
    const date = dayOfDate(day)
    const begun = batches.flatMap(({ begunAt }) => begunAt?.getTime() ?? [])
    const lastBegunAt = begun.length === 0 ? null : new Date(Math.max(...begun))
    const addedAs = addedFor.get(dayId) ?? null
    const isOver = isDayOver({ date, lastBegunAt, now, clock })
    const doughs = batches.flatMap(({ id, code, state, doneAt }): LostDough[] => {
      if (!isOutState(state)) return []
      const again = bakedAgain.get(id) ?? null
      return [
        {
          id,
          code,
          state,
          day: number,
          outAt: doneAt,
          again,
          whyNot: whyNotBakedAgain({
            state,
            isBakedAgain: again !== null,
            isDayOver: isOver,
            isDayAddedFor: addedAs !== null,
          }),
          when: whenOf(date, today, lastBegunAt !== null),
        },
      ]
    })
    const short = doughs.filter(({ again }) => again === null).length
    return { doughs, loss: { number, short, addedAs, whyNot: whyNoDayAdded({ short, isAddedFor: addedAs !== null }) } }
  })
  return { doughs: perDay.flatMap(({ doughs }) => doughs), days: perDay.map(({ loss }) => loss) }
}

function whenOf(date: string | null, today: string, isBegun: boolean): LostDough['when'] {
  if (isBegun || date === today) return 'today'
  return date === null ? 'its-day' : { date }
}

import { turnsOf } from '@/lib/kitchen/batches/turns-of'
import { isDayOver } from '@/lib/kitchen/conduct/is-day-over'
import { isOutState } from '@/lib/kitchen/conduct/is-out-state'
import { whyNoDayAdded } from '@/lib/kitchen/conduct/why-no-day-added'
import { whyNotBakedAgain } from '@/lib/kitchen/conduct/why-not-baked-again'
import { whyNotExchanged } from '@/lib/kitchen/conduct/why-not-exchanged'
import { Refusal } from '@/lib/kitchen/refusal'
import { nextCodes } from '@/lib/kitchen/repairs/next-codes'
import { orderOfAddedDay, type PlannedOrder } from '@/lib/kitchen/repairs/order-of-added-day'
import type { TrialContent } from '@/lib/kitchen/results/content-of-trial'
import { reasonGiven } from './moves'

type Dough = TrialContent['doughs'][number]
type Made = Pick<Dough, 'code' | 'arm' | 'day' | 'plannedOrder'>
type Repair = TrialContent['repairs'][number]
type Asked = { doughs: readonly Dough[]; now: Date }

/** What was done about losses, by the rules that judge it. Doughs and mixing days that it makes are for the floor to take in. */
export class Repairs {
  done: Repair[] = []
  private dates = new Map<number, string>()

  constructor(private readonly q: { plan: PlannedOrder; timeZone: string; by: Repair['by'] }) {}

  fork(): Repairs {
    const other = new Repairs(this.q)
    other.done = [...this.done]
    other.dates = new Map(this.dates)
    return other
  }

  /** Places in their mixing days, with those that were exchanged. */
  turns(doughs: readonly Dough[]): (dough: Dough) => number {
    const swaps = this.of('swap')
    if (swaps.length === 0) return ({ plannedOrder }) => plannedOrder
    const idOf = new Map(doughs.map(({ code, id }) => [code, id]))
    const turns = turnsOf(
      doughs,
      swaps.map(({ code, otherCode }) => ({ batchId: idOf.get(code!)!, otherBatchId: idOf.get(otherCode!)! })),
    )
    return ({ id }) => turns.get(id)!
  }

  /** Whether something that was done rests on a dough being out since a moment. */
  isBuiltOn({ code, day }: Dough, since: Date): boolean {
    return (
      this.of('bake_again').some((repair) => repair.code === code) ||
      this.of('add_day').some((repair) => repair.day === day && new Date(repair.at) >= since)
    )
  }

  bakeAgain(dough: Dough, { doughs, now }: Asked): Made {
    const { code, day, arm, state } = dough
    const ofDay = doughs.filter((each) => each.day === day)
    const begun = ofDay.flatMap(({ begunAt }) => (begunAt === null ? [] : Date.parse(begunAt)))
    const fault = whyNotBakedAgain({
      state,
      isBakedAgain: this.of('bake_again').some((repair) => repair.code === code),
      isDayOver: isDayOver({
        date: this.dates.get(day) ?? null,
        lastBegunAt: begun.length === 0 ? null : new Date(Math.max(...begun)),
        now,
        clock: { timeZone: this.q.timeZone, dayTurnsAtH: 0 },
      }),
      isDayAddedFor: this.of('add_day').some((repair) => repair.day === day),
    })
    if (fault) throw new Refusal(fault)
    const [otherCode] = this.codes(doughs, 1)
    this.keep({ kind: 'bake_again', code, otherCode }, now)
    return { code: otherCode!, arm, day, plannedOrder: Math.max(...ofDay.map(({ plannedOrder }) => plannedOrder)) + 1 }
  }

  addDay(day: number, { doughs, now }: Asked): Made[] {
    const ofDay = doughs.filter((each) => each.day === day)
    if (ofDay.length === 0) throw new Refusal('not-found')
    const again = new Set(this.of('bake_again').map(({ code }) => code))
    const fault = whyNoDayAdded({
      short: ofDay.filter(({ code, state }) => isOutState(state) && !again.has(code)).length,
      isAddedFor: this.of('add_day').some((repair) => repair.day === day),
    })
    if (fault) throw new Refusal(fault)
    const otherDay = Math.max(...doughs.map((each) => each.day)) + 1
    const order = orderOfAddedDay(this.q.plan, otherDay)
    if (!order) throw new Refusal('codes-used-up')
    const codes = this.codes(doughs, order.length)
    this.keep({ kind: 'add_day', day, otherDay }, now)
    return order.map(({ arm, place }, i) => ({ code: codes[i]!, arm, day: otherDay, plannedOrder: place }))
  }

  swap(one: Dough, other: Dough, now: Date): void {
    const fault = whyNotExchanged({ ...one, dayNumber: one.day }, { ...other, dayNumber: other.day })
    if (fault) throw new Refusal(fault)
    this.keep({ kind: 'swap', code: one.code, otherCode: other.code, why: reasonGiven }, now)
  }

  date(day: number, date: string | null, doughs: readonly Dough[]): void {
    if (date === (this.dates.get(day) ?? null)) return
    const ofDay = doughs.filter((each) => each.day === day)
    if (ofDay.length === 0) throw new Refusal('not-found')
    if (ofDay.some(({ begunAt }) => begunAt !== null)) throw new Refusal('day-begun')
    if (date === null) this.dates.delete(day)
    else this.dates.set(day, date)
  }

  private of(kind: Repair['kind']): Repair[] {
    return this.done.filter((repair) => repair.kind === kind)
  }

  private codes(doughs: readonly Dough[], count: number): string[] {
    const { seed } = this.q.plan.order
    const codes = nextCodes({ seed, used: doughs.map(({ code }) => code), count })
    if (!codes) throw new Refusal('codes-used-up')
    return codes
  }

  private keep(repair: Pick<Repair, 'kind'> & Partial<Repair>, now: Date): void {
    const number = this.done.length + 1
    const nothing = { code: null, otherCode: null, day: null, otherDay: null, why: null }
    this.done.push({ ...nothing, id: String(number), number, by: this.q.by, at: now.toISOString(), ...repair })
  }
}

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { firstNotAsPlanned } from '@/lib/kitchen/repairs/first-not-as-planned'
import { nextCodes } from '@/lib/kitchen/repairs/next-codes'
import { orderOfAddedDay } from '@/lib/kitchen/repairs/order-of-added-day'
import { drawUpPlan } from '@/lib/kitchen/trials/draw-up-plan'
import { plannedFacts } from '@/tests/support/plan-facts'

const drawn = drawUpPlan(plannedFacts({ declared: { mixingDays: 3, batchesPerArm: 2 } }), 'a seed')
const order = drawn.order!
const plan = { arms: drawn.arms, order }

type Dough = { code: string; arm: number; day: number; plannedOrder: number; state: string }
const asPlanned = (): Dough[] =>
  order.batches.map(({ code, arm, day, place }) => ({ code, arm, day, plannedOrder: place, state: 'measured' }))
const placesOf = (doughs: readonly Dough[], day: number) => doughs.filter((dough) => dough.day === day).length

/** What a repair does: the dough is out, and another of its kind is last in its day. */
function bakedAgain(doughs: Dough[], at: number, out = 'lost'): Dough[] {
  const dough = doughs[at]!
  const [code] = nextCodes({ seed: order.seed, used: doughs.map((each) => each.code), count: 1 })!
  return [
    ...doughs.map((each) => (each === dough ? { ...each, state: out } : each)),
    { code: code!, arm: dough.arm, day: dough.day, plannedOrder: placesOf(doughs, dough.day) + 1, state: 'measured' },
  ]
}
function dayAdded(doughs: Dough[]): Dough[] {
  const day = Math.max(...doughs.map((dough) => dough.day)) + 1
  const places = orderOfAddedDay(plan, day)!
  const codes = nextCodes({ seed: order.seed, used: doughs.map(({ code }) => code), count: places.length })!
  return [
    ...doughs,
    ...places.map(({ arm, place }, i) => ({ code: codes[i]!, arm, day, plannedOrder: place, state: 'measured' })),
  ]
}
const lost = (doughs: Dough[], at: number): Dough[] =>
  doughs.map((dough, i) => (i === at ? { ...dough, state: 'lost' } : dough))

describe('doughs that the plan drew', () => {
  it('agree, in whatever state they ended', () => {
    expect(firstNotAsPlanned(asPlanned(), plan)).toBeNull()
    expect(firstNotAsPlanned(lost(asPlanned(), 3), plan)).toBeNull()
  })

  it.each<[string, Partial<Dough>]>([
    ['of another kind', { arm: 9 }],
    ['on another day', { day: 2 }],
    ['at another place', { plannedOrder: 40 }],
    ['under another code', { code: '100' }],
  ])('do not where one is %s', (_, change) => {
    const doughs = asPlanned().map((dough, i) => (i === 0 ? { ...dough, ...change } : dough))
    expect(firstNotAsPlanned(doughs, plan)).not.toBeNull()
  })

  it('do not where one is gone', () => {
    expect(firstNotAsPlanned(asPlanned().slice(1), plan)).toBe(order.batches[0]!.code)
  })
})

describe('doughs that a repair made', () => {
  it('agree in any order of losses and repairs', () => {
    const step = fc.record({ at: fc.nat(200), isDay: fc.boolean() })
    fc.assert(
      fc.property(fc.array(step, { maxLength: 8 }), (steps) => {
        let doughs = asPlanned()
        const [closed, days] = [new Set<number>(), new Set<number>([1, 2, 3])]
        for (const { at, isDay } of steps) {
          const which = at % doughs.length
          const { day, state } = doughs[which]!
          if (state !== 'measured' || closed.has(day)) continue
          doughs = isDay ? dayAdded(lost(doughs, which)) : bakedAgain(doughs, which, 'set_aside')
          if (isDay) closed.add(day)
          days.add(Math.max(...doughs.map((dough) => dough.day)))
          expect(firstNotAsPlanned(doughs, plan)).toBeNull()
        }
      }),
    )
  })

  it('do not where nothing was lost for them', () => {
    const doughs = bakedAgain(asPlanned(), 0)
    const forged = doughs.map((dough) => ({ ...dough, state: 'measured' }))
    expect(firstNotAsPlanned(forged, plan)).toBe(doughs.at(-1)!.code)
    expect(firstNotAsPlanned(dayAdded(asPlanned()), plan)).not.toBeNull()
    expect(firstNotAsPlanned(dayAdded(dayAdded(lost(asPlanned(), 0))), plan)).not.toBeNull()
    expect(firstNotAsPlanned(dayAdded(bakedAgain(asPlanned(), 0)), plan)).not.toBeNull()
  })

  it.each<[string, (made: Dough) => Partial<Dough>]>([
    ['a code that somebody chose', () => ({ code: '999' })],
    ['another kind', ({ arm }) => ({ arm: arm === 0 ? 1 : 0 })],
    ['no kind of the plan', () => ({ arm: 7, state: 'lost' })],
    ['another day', ({ day }) => ({ day: day === 1 ? 2 : 1 })],
    ['a day that nobody added', () => ({ day: 4, plannedOrder: 1 })],
    ['a place beyond the last', ({ plannedOrder }) => ({ plannedOrder: plannedOrder + 1 })],
    ['a place that is taken', () => ({ plannedOrder: 1 })],
  ])('do not where one has %s', (_, change) => {
    const doughs = bakedAgain(asPlanned(), 0)
    const forged = doughs.map((dough, i) => (i === doughs.length - 1 ? { ...dough, ...change(dough) } : dough))
    expect(forged.some(({ code }) => code === '999') && order.batches.some(({ code }) => code === '999')).toBe(false)
    expect(firstNotAsPlanned(forged, plan)).not.toBeNull()
  })

  it('do not where the order of an added day is not the drawn one', () => {
    const doughs = dayAdded(lost(asPlanned(), 0))
    const ofDay = doughs.filter(({ day }) => day === 4)
    const other = ofDay.find(({ arm }) => arm !== ofDay[0]!.arm)!
    const swapped = doughs.map((dough) =>
      dough === ofDay[0] ? { ...dough, arm: other.arm } : dough === other ? { ...dough, arm: ofDay[0]!.arm } : dough,
    )
    expect(firstNotAsPlanned(swapped, plan)).not.toBeNull()
  })
})

it('the days of the plan are the first of the longer draw, so an added one is the next of the very same', () => {
  for (const day of [1, 2, 3])
    expect(orderOfAddedDay(plan, day)).toEqual(
      order.batches.filter((batch) => batch.day === day).map(({ code: _, ...batch }) => batch),
    )
  expect(orderOfAddedDay(plan, 4)!.map(({ place }) => place)).toEqual(
    Array.from({ length: 2 * plan.arms.length }, (_, i) => i + 1),
  )
  expect(orderOfAddedDay(plan, 900)).toBeNull()
})

it('codes that come after are the next of the draw, none twice, until none is left', () => {
  const used = order.batches.map(({ code }) => code)
  const codes = nextCodes({ seed: order.seed, used, count: 900 - used.length })!
  expect(new Set([...used, ...codes]).size).toBe(900)
  expect(nextCodes({ seed: order.seed, used, count: 3 })).toEqual(codes.slice(0, 3))
  expect(nextCodes({ seed: order.seed, used, count: 901 - used.length })).toBeNull()
})

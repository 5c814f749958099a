import 'server-only'
import { isOutState } from '../conduct/is-out-state'
import type { Plan } from '../trials/plan-types'
import { nextCodes } from './next-codes'
import { doughsOfEachKind, orderOfAddedDay, type PlannedOrder } from './order-of-added-day'

type Dough = { code: string; arm: number; day: number; plannedOrder: number; state: string }

/**
 * Code of the first dough that neither the approved plan drew nor a repair can have made; null when there is none. It
 * asks the plan alone: doughs beside its own have the next codes of its draw, a mixing day beside its own is the next of
 * its draw and stands for one that is short, and on no day are more doughs of a kind in the comparison than planned.
 */
export function firstNotAsPlanned(doughs: readonly Dough[], plan: Pick<Plan, 'order' | 'arms'>): string | null {
  const { order, arms } = plan
  if (!order) return doughs[0]?.code ?? null
  const drawn = new Map(order.batches.map((batch) => [batch.code, batch]))
  const moved = doughs.find((dough) => {
    const planned = drawn.get(dough.code)
    return planned && (planned.arm !== dough.arm || planned.day !== dough.day || planned.place !== dough.plannedOrder)
  })
  if (moved) return moved.code
  const there = new Set(doughs.map(({ code }) => code))
  const gone = order.batches.find(({ code }) => !there.has(code))
  if (gone) return gone.code
  return firstNotMade(doughs, { order, arms }, (code) => drawn.has(code))
}

function firstNotMade(
  doughs: readonly Dough[],
  plan: PlannedOrder,
  isPlanned: (code: string) => boolean,
): string | null {
  const made = doughs.filter(({ code }) => !isPlanned(code))
  const { batches, seed } = plan.order
  const ofKind = doughsOfEachKind(plan)
  const codes = new Set(nextCodes({ seed, used: batches.map(({ code }) => code), count: made.length }))
  const stray = made.find(({ code, arm }) => !codes.has(code) || plan.arms.every(({ position }) => position !== arm))
  if (stray || made.length !== codes.size) return stray?.code ?? made[0]?.code ?? null
  const lastPlanned = Math.max(0, ...batches.map(({ day }) => day))
  const days = [...new Set([...batches, ...doughs].map(({ day }) => day))].sort((a, b) => a - b)
  const added = days.filter((day) => day > lastPlanned)
  let short = 0
  for (const day of days) {
    const isAdded = day > lastPlanned
    const ofDay = doughs.filter((dough) => dough.day === day).sort((a, b) => a.plannedOrder - b.plannedOrder)
    const first = ofDay[0]?.code ?? null
    const asDrawn = isAdded ? orderOfAddedDay(plan, day) : batches.filter((batch) => batch.day === day)
    if (!asDrawn || (isAdded && added[day - lastPlanned - 1] !== day)) return first
    const displaced = firstOutOfPlace(ofDay, asDrawn)
    if (displaced !== null) return displaced
    const standing = plan.arms.map(({ position }) =>
      ofDay.filter(({ arm, state }) => arm === position && !isOutState(state)),
    )
    const beyond = standing.find(({ length }) => length > ofKind)
    if (beyond) return beyond.at(-1)?.code ?? first
    if (standing.some(({ length }) => length < ofKind)) short += 1
  }
  // A day is added for one that is short, and once for each.
  return added.length > short ? (made.find(({ day }) => day === added.at(-1))?.code ?? null) : null
}

/** All doughs that were drawn are at their places, and others come after them without a gap. */
function firstOutOfPlace(ofDay: readonly Dough[], asDrawn: readonly { place: number; arm: number }[]): string | null {
  const lastDrawn = Math.max(0, ...asDrawn.map(({ place }) => place))
  const missing = asDrawn.some(
    ({ place, arm }) => !ofDay.some((dough) => dough.plannedOrder === place && dough.arm === arm),
  )
  if (missing) return ofDay[0]?.code ?? null
  const after = ofDay.filter(({ plannedOrder }) => plannedOrder > lastDrawn)
  if (after.length + asDrawn.length !== ofDay.length) return ofDay.at(-1)?.code ?? null
  return after.find(({ plannedOrder }, i) => plannedOrder !== lastDrawn + i + 1)?.code ?? null
}

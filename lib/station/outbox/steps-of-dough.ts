import { byMoment, timerOf, type DoughTimer, type StoodStep } from '../../kitchen/steps/course-of-dough.input'
import { lookOf, type Look, type Looks } from '../../kitchen/steps/looks.input'
import { standingSteps } from '../../kitchen/steps/standing-steps.input'
import { stateBySteps } from '../../kitchen/steps/state-by-steps.input'
import { stepDetails, type StepDetails } from '../../kitchen/steps/step-kinds.input'
import type { FloorDough } from '../keep/facts'
import type { EntryOf, EntryState, OutboxEntry } from './entry'
import { holds } from './holds'

export type StepStanding = StoodStep &
  StepDetails & {
    who: string
    personId: string
    /** When it came into the book, or on to this tablet, by the tablet's clock, ms. */
    receivedMs: number
    state: EntryState
  }

type EnteredStep = StepStanding & { isDone: boolean; supersedesId: string | null }

export type RunningTimer = DoughTimer & { batchId: string; code: string }

export type CalledLook = Look & { batchId: string; code: string }

/**
 * The steps that stand of a dough, in their order and by the tablet's clock: those of the book, and those that lie on this
 * tablet alone.
 * @param aheadMs by how much the book's clock is ahead of the tablet's
 */
export function stepsOfDough(
  dough: Pick<FloorDough, 'id' | 'steps'>,
  entries: readonly OutboxEntry[],
  aheadMs: number,
): StepStanding[] {
  return standingSteps(enteredSteps(dough, entries, aheadMs)).sort(byMoment)
}

function enteredSteps(
  { id: batchId, steps }: Pick<FloorDough, 'id' | 'steps'>,
  entries: readonly OutboxEntry[],
  aheadMs: number,
): EnteredStep[] {
  const inBook = steps.map(({ at, receivedAt, ...step }) => ({
    ...step,
    atMs: Date.parse(at) - aheadMs,
    receivedMs: Date.parse(receivedAt) - aheadMs,
    state: 'book' as const,
  }))
  const known = new Set(steps.map(({ id }) => id))
  const own = entries
    .filter((entry) => entry.kind === 'step')
    .filter((entry) => entry.payload.batchId === batchId && holds(entry) && !known.has(entry.id))
    .map((entry) => ownStep(entry, aheadMs))
  return [...inBook, ...own]
}

/**
 * Where a dough is as far as this tablet knows: by the book, and by the steps that lie on the tablet alone. Of one that was
 * taken out of the oven without a network what is read at an age falls due all the same.
 */
export function whereaboutsOf<Dough extends Pick<FloorDough, 'id' | 'state' | 'bakedAt' | 'steps'>>(
  dough: Dough,
  entries: readonly OutboxEntry[],
): Dough {
  const { state, bakedAt } = stateBySteps(
    { state: dough.state, bakedAt: dough.bakedAt === null ? null : new Date(dough.bakedAt) },
    // Its moments are the book's, as the one of the oven is.
    enteredSteps(dough, entries, 0).map((step) => ({ ...step, at: new Date(step.atMs) })),
  )
  return { ...dough, state, bakedAt: bakedAt?.toISOString() ?? null }
}

/** What runs for the doughs of a floor, what is over first and then what will be. */
export function runningTimers(
  doughs: readonly FloorDough[],
  entries: readonly OutboxEntry[],
  aheadMs: number,
): RunningTimer[] {
  return doughs
    .flatMap((dough) => {
      const timer = timerOf(stepsOfDough(dough, entries, aheadMs), dough.times)
      return timer ? [{ ...timer, batchId: dough.id, code: dough.code }] : []
    })
    .sort((a, b) => a.endsMs - b.endsMs)
}

/** What somebody is to look at, of the doughs of a floor. */
export function calledLooks(
  doughs: readonly FloorDough[],
  looks: Looks,
  entries: readonly OutboxEntry[],
  aheadMs: number,
): CalledLook[] {
  return doughs.flatMap((dough) => {
    const look = lookOf(stepsOfDough(dough, entries, aheadMs), looks, dough.times)
    return look ? [{ ...look, batchId: dough.id, code: dough.code }] : []
  })
}

function ownStep({ id, personName, personId, state, payload }: EntryOf<'step'>, aheadMs: number) {
  const { step, isDone, agoS, clockAheadS, supersedesId, takenAt } = payload
  // The tablet's clock may have been set since: what it said then is put right by what it knew of itself then.
  const entered = Date.parse(takenAt)
  const atThen = clockAheadS === null || clockAheadS === undefined ? entered : entered + clockAheadS * 1000 - aheadMs
  const details = Object.fromEntries(stepDetails.map((name) => [name, payload[name] ?? null])) as StepDetails
  return {
    ...details,
    id,
    step,
    isDone,
    atMs: atThen - agoS * 1000,
    receivedMs: atThen,
    supersedesId: supersedesId ?? null,
    who: personName,
    personId,
    state,
  }
}

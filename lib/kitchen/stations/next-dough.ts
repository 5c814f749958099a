import 'server-only'
import type { MixedBatch } from '../batches/rules'
import { byTurn, needsCleanDown, nextToBegin } from '../batches/rules'
import { dayOfDate } from '../day-of-date'
import { cautionsOfDough } from '../trials/cautions-of-dough'

type Waiting = {
  id: string
  code: string
  revision: number
  mixingDay: { number: number; day: Date | null }
  arm: Parameters<typeof cautionsOfDough>[0]
}

/** What a tablet is told of the dough of a trial that is to be begun next, by its code; null when none waits. */
export function nextDough(batches: readonly Waiting[], mixed: readonly (MixedBatch & { code: string })[]) {
  const first = nextToBegin(mixed)
  const batch = batches.find(({ id }) => id === first?.id)
  if (!first || !batch) return null
  const { id, code, revision, mixingDay, arm } = batch
  return {
    ...cautionsOfDough(arm),
    id,
    code,
    /** Whoever begins it names it, so that nobody begins what has changed meanwhile. */
    revision,
    dayNumber: mixingDay.number,
    day: dayOfDate(mixingDay.day),
    cleanDownFirst: needsCleanDown(first, mixed),
    /** Its place in the day, and what waits after it on that day, with which it can exchange places. */
    turn: first.turn,
    after: mixed
      .filter((other) => other.state === 'waiting' && other.dayNumber === first.dayNumber && other.id !== first.id)
      .sort(byTurn)
      .map((other) => ({ id: other.id, code: other.code, turn: other.turn })),
  }
}

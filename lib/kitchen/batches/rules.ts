import type { BatchStateName } from './batch-state.input'

/** What a batch may become by moving it; it leaves `waiting` forwards by being begun. */
const following: Record<BatchStateName, readonly BatchStateName[]> = {
  waiting: ['not_baked'],
  weighing: ['in_work', 'lost', 'set_aside'],
  in_work: ['baked', 'lost', 'set_aside'],
  baked: ['measured', 'lost', 'set_aside'],
  measured: [],
  lost: [],
  set_aside: [],
  not_baked: [],
}

/** Whether a batch may go from one state to another by hand. */
export function mayMove(from: BatchStateName, to: BatchStateName): boolean {
  return following[from].includes(to)
}

/** The next state on the way to measured, for batches that are under way. */
export function nextState(state: BatchStateName): 'in_work' | 'baked' | 'measured' | null {
  switch (state) {
    case 'weighing':
      return 'in_work'
    case 'in_work':
      return 'baked'
    case 'baked':
      return 'measured'
    case 'waiting':
    case 'measured':
    case 'lost':
    case 'set_aside':
    case 'not_baked':
      return null
    default:
      return state satisfies never
  }
}

/** Nothing more is done with it on the floor. */
export function isOver(state: BatchStateName): boolean {
  return following[state].length === 0
}

/** The states in which something is still to be done with a batch; `waiting` is not begun yet, the others are under way. */
export const unfinishedStates = (Object.keys(following) as BatchStateName[]).filter((state) => !isOver(state))
export const underWayStates = unfinishedStates.filter((state) => state !== 'waiting')

export type PlacedBatch = {
  id: string
  dayNumber: number
  plannedOrder: number
  /** Its place in the day as it stands now: the planned one, unless it was exchanged with another's. */
  turn: number
  state: BatchStateName
}

/** Order of a trial's batches as it was drawn: by mixing day, then by place. */
function byPlan(a: PlacedBatch, b: PlacedBatch): number {
  return a.dayNumber - b.dayNumber || a.plannedOrder - b.plannedOrder
}

/** Order in which a trial's batches are to be begun: as it was drawn, but for places that were exchanged since. */
export function byTurn(a: Pick<PlacedBatch, 'dayNumber' | 'turn'>, b: Pick<PlacedBatch, 'dayNumber' | 'turn'>): number {
  return a.dayNumber - b.dayNumber || a.turn - b.turn
}

/** The batch of a trial that is to be begun next; null when none waits. */
export function nextToBegin<B extends PlacedBatch>(batches: readonly B[]): B | null {
  return [...batches].filter(({ state }) => state === 'waiting').sort(byTurn)[0] ?? null
}

export type MixedBatch = PlacedBatch & {
  cleanDownBefore: boolean
  begunAt: Date | null
  /** What it may leave in the bowl: allergens, and ingredients whose allergens nobody has checked. */
  leaves: readonly string[]
  /** What of that the control would not leave. */
  adds: readonly string[]
}

/**
 * Whether bench, bowl and tools must be cleaned down before a batch: the plan says so; what is mixed right before it adds
 * something that it must not carry, because places were exchanged or a batch between was not baked; or one that was
 * to come after it was begun already and left such a thing.
 * @param before what is mixed right before it; what was begun last unless another is given
 */
export function needsCleanDown(
  batch: MixedBatch,
  ofTrial: readonly MixedBatch[],
  before: MixedBatch | null = lastBegun(ofTrial),
): boolean {
  if (batch.cleanDownBefore) return true
  if (before && before.id !== batch.id && before.adds.some((each) => !batch.leaves.includes(each))) return true
  return ofTrial.some(
    (other) =>
      other.id !== batch.id &&
      other.begunAt !== null &&
      byPlan(other, batch) > 0 &&
      other.leaves.some((each) => !batch.leaves.includes(each)),
  )
}

function lastBegun(batches: readonly MixedBatch[]): MixedBatch | null {
  const begun = batches.flatMap((batch) => (batch.begunAt === null ? [] : [{ batch, at: batch.begunAt.getTime() }]))
  return begun.sort((a, b) => b.at - a.at || byTurn(b.batch, a.batch))[0]?.batch ?? null
}

/** A move of a batch can be undone for this long. */
export const undoMs = 10_000

type MovedBatch = {
  revision: number
  movedFrom: BatchStateName | null
  movedAt: Date | null
  movedById: string | null
  movedRevision: number | null
}

/**
 * Why somebody may not undo a batch's last move, as far as the batch itself shows it; null when they may. Whoever
 * moved it may, within ten seconds by the server's clock, unless something was written to the batch since.
 */
export function whyNoUndo(q: {
  batch: MovedBatch
  personId: string
  now: Date
}): 'nothing-to-undo' | 'undo-not-yours' | 'undo-too-late' | 'undo-built-on' | null {
  const { movedFrom, movedAt, movedById, movedRevision, revision } = q.batch
  if (movedFrom === null || movedAt === null) return 'nothing-to-undo'
  if (movedById !== q.personId) return 'undo-not-yours'
  if (Math.abs(q.now.getTime() - movedAt.getTime()) > undoMs) return 'undo-too-late'
  return movedRevision === revision ? null : 'undo-built-on'
}

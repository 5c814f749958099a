import 'server-only'
import type { Tx } from '../../db/client'
import { lockBatches } from '../readings/lock-batches'
import { isOpen } from '../trials/rules'
import type { StepEntry } from './log-step.input'
import type { Whereabouts } from './state-by-steps.input'
import type { StepKind } from './step-kinds.input'

/** A step as it stands in the book. */
export type StepRow = {
  bakeryId: string
  id: string
  trialId: string
  batchId: string
  step: StepKind
  isDone: boolean
  /** When it was, by our own clock. */
  at: Date
  agoS: number
  clockAheadS: number | null
  setting: string | null
  chamberTempC: number | null
  place: string | null
  setTempC: number | null
  readTempC: number | null
  steam: boolean | null
  beside: string | null
  personId: string
  takenAt: Date
  receivedAt: Date
  supersedesId: string | null
  reason: string | null
  contentHash: string
}

export type KnownStep = Pick<
  StepRow,
  'id' | 'batchId' | 'step' | 'isDone' | 'at' | 'personId' | 'takenAt' | 'receivedAt' | 'supersedesId' | 'contentHash'
>

export type StepDough = Whereabouts & { trialId: string; code: string; begunAt: Date | null; isOpen: boolean }

/** What steps are judged by, under the lock of their doughs. Ids are keys in lower case, as the database writes them. */
export type StepFacts = {
  batches: Map<string, StepDough>
  /** Those of these doughs, and those that have an entry's own id or are corrected. */
  steps: Map<string, KnownStep>
}

/** Locks the doughs that entries are of and loads what they are judged by. What is not of this bakery is not there. */
export async function loadStepFacts(tx: Tx, bakeryId: string, entries: readonly StepEntry[]): Promise<StepFacts> {
  const named = lowerOf(entries.flatMap(({ id, supersedesId }) => [id, supersedesId ?? id]))
  const batches = await lockBatches(tx, bakeryId, lowerOf(entries.map(({ batchId }) => batchId)), [])
  const batchIds = batches.map(({ id }) => id)
  const [times, steps] = await Promise.all([
    tx.batch.findMany({
      where: { bakeryId, id: { in: batchIds } },
      select: { id: true, begunAt: true, bakedAt: true },
    }),
    tx.step.findMany({
      where: { bakeryId, OR: [{ id: { in: named } }, { batchId: { in: batchIds } }] },
      select: {
        id: true,
        batchId: true,
        step: true,
        isDone: true,
        at: true,
        personId: true,
        takenAt: true,
        receivedAt: true,
        supersedesId: true,
        contentHash: true,
      },
    }),
  ])
  const timesOf = new Map(times.map(({ id, ...of }) => [id, of]))
  return {
    batches: new Map(
      batches.map(({ id, trialId, code, state, trial }) => [
        id,
        { trialId, code, state, isOpen: isOpen(trial.state), begunAt: null, bakedAt: null, ...timesOf.get(id) },
      ]),
    ),
    steps: new Map(steps.map((step) => [step.id, step])),
  }
}

function lowerOf(ids: readonly string[]): string[] {
  return [...new Set(ids.map((id) => id.toLowerCase()))]
}

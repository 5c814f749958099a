import 'server-only'
import type { Tx } from '../../db/client'
import { lockBatches } from '../readings/lock-batches'
import type { StepEntry } from './log-step.input'
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

export type KnownStep = Pick<StepRow, 'id' | 'batchId' | 'step' | 'personId' | 'takenAt' | 'receivedAt' | 'contentHash'>

/** What steps are judged by, under the lock of their doughs. Ids are keys in lower case, as the database writes them. */
export type StepFacts = {
  batches: Map<string, { trialId: string; code: string; state: string; begunAt: Date | null }>
  /** Those that have an entry's own id, and those that are corrected. */
  steps: Map<string, KnownStep>
}

/** Locks the doughs that entries are of and loads what they are judged by. What is not of this bakery is not there. */
export async function loadStepFacts(tx: Tx, bakeryId: string, entries: readonly StepEntry[]): Promise<StepFacts> {
  const named = lowerOf(entries.flatMap(({ id, supersedesId }) => [id, supersedesId ?? id]))
  const batches = await lockBatches(tx, bakeryId, lowerOf(entries.map(({ batchId }) => batchId)), [])
  const [begun, steps] = await Promise.all([
    tx.batch.findMany({
      where: { bakeryId, id: { in: batches.map(({ id }) => id) } },
      select: { id: true, begunAt: true },
    }),
    tx.step.findMany({
      where: { bakeryId, id: { in: named } },
      select: {
        id: true,
        batchId: true,
        step: true,
        personId: true,
        takenAt: true,
        receivedAt: true,
        contentHash: true,
      },
    }),
  ])
  const begunAt = new Map(begun.map((batch) => [batch.id, batch.begunAt]))
  return {
    batches: new Map(
      batches.map(({ id, trialId, code, state }) => [id, { trialId, code, state, begunAt: begunAt.get(id) ?? null }]),
    ),
    steps: new Map(steps.map((step) => [step.id, step])),
  }
}

function lowerOf(ids: readonly string[]): string[] {
  return [...new Set(ids.map((id) => id.toLowerCase()))]
}

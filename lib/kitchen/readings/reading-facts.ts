import 'server-only'
import type { AsideWhy, BatchState, MeasureLevel, TrialState } from '../../db/generated/enums'
import type { RangeFacts } from './plausible-range'
import type { ReadingRow } from './keep-readings'

export type ReadingPlace = { batchId: string; measureId: string; piece: number | null; factorLevel: string | null }

export type BatchFacts = {
  id: string
  trialId: string
  code: string
  state: BatchState
  trial: {
    state: TrialState
    /** Its readings were closed and sealed: what comes now is a proposed amendment. */
    isSealed: boolean
    piecesPerBatch: number
    factorName: string | null
    factorLevels: readonly string[]
    createdAt: Date
  }
}

export type MeasureFacts = {
  id: string
  code: string | null
  name: string
  unit: string
  level: MeasureLevel
  derivation: string | null
  repeats: number
  repeatLimit: number | null
  plausibleLeast: number
  plausibleMost: number
}

export type KnownReading = Omit<
  ReadingRow,
  'bakeryId' | 'supersedesId' | 'reason' | 'plausibleLeast' | 'plausibleMost'
> & {
  plausibleLeast: number | null
  plausibleMost: number | null
  isCorrected: boolean
}

export type HoldingReading = { id: string; repeat: number; value: number }

export type AsideFacts = { hash: string; why: AsideWhy; trialId: string; batchId: string }

/**
 * What entries of readings are judged by: what the book says of their batches, under lock, and what earlier entries of
 * the same request did. Ids are keys in lower case, as the database writes them.
 */
export type ReadingFacts = {
  batches: Map<string, BatchFacts>
  measures: Map<string, MeasureFacts>
  /** Those that have an entry's own id, and those that are corrected. */
  readings: Map<string, KnownReading>
  /** What holds, by `keyOfPlace`. */
  places: Map<string, HoldingReading[]>
  /** By the trial's id. */
  ranges: Map<string, RangeFacts>
  /** What was kept aside under an id, each with the hash of its content. */
  aside: Map<string, AsideFacts[]>
}

/** One key for a place of any number of repeats. */
export function keyOfPlace({ batchId, measureId, piece, factorLevel }: ReadingPlace): string {
  return JSON.stringify([batchId, measureId, piece, factorLevel])
}

/** Lets the facts know of a reading that is going to be in the book, for the entries behind it. */
export function noteReading(facts: ReadingFacts, row: ReadingRow): void {
  const wrong = row.supersedesId === null ? undefined : facts.readings.get(row.supersedesId)
  if (wrong) {
    facts.readings.set(wrong.id, { ...wrong, isCorrected: true })
    const left = keyOfPlace(wrong)
    facts.places.set(
      left,
      (facts.places.get(left) ?? []).filter(({ id }) => id !== wrong.id),
    )
  }
  facts.readings.set(row.id, { ...row, isCorrected: false })
  const key = keyOfPlace(row)
  facts.places.set(key, [...(facts.places.get(key) ?? []), { id: row.id, repeat: row.repeat, value: row.value }])
}

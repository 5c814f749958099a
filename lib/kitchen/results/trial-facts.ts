import 'server-only'
import type { BatchState, GoodDirection, HoldsFor, MarginUnit, TrialKind, TrialState } from '../../db/generated/enums'

/** What was declared before baking, as far as the result rests on it. */
export type DeclaredTrial = {
  kind: TrialKind
  state: TrialState
  measure: { name: string; unit: string; digits: number; direction: GoodDirection }
  /** Smallest difference worth having, > 0. */
  margin: number
  marginUnit: MarginUnit
  confidencePct: number
  /** `these_days`: doughs are the unit of the verdict, which is said of these mixing days only. */
  holdsFor: HoldsFor
  /** By position; 0 is the control. */
  arms: readonly { position: number; name: string; plannedWaterG: number | null }[]
  mixingDays: number
  /** Of each arm, on each mixing day. */
  batchesPerArm: number
  /** A factor within batches: bake temperature, storage day. */
  factor: { name: string; levels: readonly string[] } | null
}

export type MeasuredPiece = {
  piece: number
  /** Of the factor within batches, where there is one. */
  level: string | null
  /** The primary measure, repeats brought together; null while it is missing. */
  value: number | null
  loafMassG: number | null
  volumeMl: number | null
}

export type ConditionCode = 'dough-temp' | 'proof-time' | 'water-added'

/** One mix, with what was read of it. */
export type MeasuredBatch = {
  id: string
  code: string
  /** Position of its arm. */
  arm: number
  day: number
  plannedOrder: number
  state: BatchState
  stateWhy: string | null
  begunAt: Date | null
  piecesMade: number | null
  piecesGood: number | null
  pieces: readonly MeasuredPiece[]
  /** °C, s, g; null where nobody wrote it down. */
  conditions: Readonly<Record<ConditionCode, number | null>>
  /** By what was weighed before it was read, it is not one of its arm. */
  isOutOfItsArm: boolean
  /** The same by what was weighed last. */
  isOutAsLastWeighed: boolean
}

import 'server-only'
import type { Allergen } from '../../db/generated/enums'
import type { AsideFacts, BatchFacts } from '../readings/reading-facts'
import type { WeighingRow } from './keep-weighings'
import type { TrialLine } from './lines-of-plan'
import type { TypedCode } from './typed-codes'

/** A lot as weighings are judged by it. */
export type LotFacts = {
  code: string
  ingredientId: string
  ingredient: { name: string; allergens: readonly Allergen[]; allergensCheckedAt: Date | null }
}

export type KnownWeighing = Pick<
  WeighingRow,
  | 'id'
  | 'trialId'
  | 'batchId'
  | 'stageId'
  | 'ingredientId'
  | 'part'
  | 'personId'
  | 'takenAt'
  | 'receivedAt'
  | 'contentHash'
> & { isCorrected: boolean }

/**
 * What entries of weighings are judged by: what the book says of their batches, under lock, and what earlier entries of
 * the same request did. Ids are keys in lower case, as the database writes them.
 */
export type WeighingFacts = {
  batches: Map<string, BatchFacts>
  /** By the trial's id; none where its plan cannot be read. */
  lines: Map<string, readonly TrialLine[]>
  /** All of these batches, and those that have an entry's own id. */
  weighings: Map<string, KnownWeighing>
  /** Those that entries name, of whatever ingredient. */
  lots: ReadonlyMap<string, LotFacts>
  /** What the stores hold under the codes that entries name, by `typedCodeKey`. */
  typed: ReadonlyMap<string, TypedCode>
  /** What was kept aside under an id, each with the hash of its content. */
  aside: Map<string, AsideFacts[]>
}

export type LinePlace = Pick<WeighingRow, 'batchId' | 'stageId' | 'ingredientId' | 'part'>

/** What stands of a line; null where nothing was written yet. */
export function standingAt(facts: WeighingFacts, place: LinePlace): KnownWeighing | null {
  return [...facts.weighings.values()].find((known) => !known.isCorrected && isSameLine(known, place)) ?? null
}

/** Whether two are of the same line of the same dough. */
export function isSameLine(a: LinePlace, b: LinePlace): boolean {
  return a.batchId === b.batchId && a.stageId === b.stageId && a.ingredientId === b.ingredientId && a.part === b.part
}

/** Lets the facts know of a weighing that is going to be in the book, for the entries behind it. */
export function noteWeighing(facts: WeighingFacts, row: WeighingRow): void {
  const wrong = row.supersedesId === null ? undefined : facts.weighings.get(row.supersedesId)
  if (wrong) facts.weighings.set(wrong.id, { ...wrong, isCorrected: true })
  facts.weighings.set(row.id, { ...row, isCorrected: false })
}

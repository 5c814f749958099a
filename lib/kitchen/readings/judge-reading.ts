import 'server-only'
import type { ActorOf } from '../../auth/rights'
import type { AsideWhy } from '../../db/generated/enums'
import type { Json } from '../../documents/canonical-text'
import { Refusal } from '../refusal'
import { mustBeOpen } from '../trials/must-be-open'
import { answerOfReading, type ReadingAnswer } from './answer-of-reading'
import { enteredValue } from './entered-value'
import { hashOfContent } from './hash-of-content'
import type { ReadingRow } from './keep-readings'
import { mustBeConfirmed } from './must-be-confirmed'
import { mustBeTheirsToCorrect } from './must-be-theirs-to-correct'
import { mustBePlace } from './must-be-place'
import { plausibleRange } from './plausible-range'
import { isOutside } from './range-of-reading'
import type { ReadingEntry } from './reading-content.input'
import {
  keyOfPlace,
  type BatchFacts,
  type KnownReading,
  type MeasureFacts,
  type ReadingFacts,
  type ReadingPlace,
} from './reading-facts'
import { levelOfPiece } from './rules'
import { takesRepeat } from './takes-repeat.input'

export type ReadingVerdict =
  /** To be kept, and what the record says of it. */
  | {
      outcome: 'ready'
      row: ReadingRow
      answer: ReadingAnswer
      note: { before?: Json; after: { [name: string]: Json }; reason?: string }
    }
  /** In the book already, with just this content. */
  | { outcome: 'again'; answer: ReadingAnswer }
  /** It cannot go where it belongs, by no fault of its own; the batch is the one that waits for it to be settled. */
  | { outcome: 'aside'; why: AsideWhy; isAgain: boolean; trialId: string; batchId: string; hash: string }

type By = { actor: ActorOf<'log-reading'>; now: Date }
type Logged = Exclude<ReadingEntry, { supersedesId: string }>
type Correction = Extract<ReadingEntry, { supersedesId: string }>

/**
 * Judges one entry by the facts of its request. A reading keeps the time by the device's clock, however odd (`oddTime`
 * tells it from then on); a correction keeps the time at which the wrong one was taken. What comes to readings that were
 * sealed is aside, as `trial_closed`, where it could have been read: a proposed amendment.
 * @throws Refusal not-found, trial-not-approved, trial-closed, trial-stopped, batch-not-begun, batch-not-baked,
 * correction-not-yours, correction-wants-pin, no-further-repeat, odd-reading, and what is wrong at a field
 */
export function judgeReading(entry: ReadingEntry, facts: ReadingFacts, by: By): ReadingVerdict {
  return 'supersedesId' in entry ? judgeCorrection(entry, facts, by) : judgeLogged(entry, facts, by)
}

function judgeLogged(entry: Logged, facts: ReadingFacts, by: By): ReadingVerdict {
  const batch = facts.batches.get(entry.batchId.toLowerCase())
  const measure = facts.measures.get(entry.measureId.toLowerCase())
  if (!batch || !measure) throw new Refusal('not-found')
  const place = {
    batchId: batch.id,
    measureId: measure.id,
    piece: entry.piece ?? null,
    factorLevel: entry.factorLevel ?? null,
  }
  const known = cameBefore(entry, { facts, batch, measure, place })
  if (known) return known
  if (!batch.trial.isSealed) mustBeOpen(batch.trial.state)
  if (batch.state === 'waiting') throw new Refusal('batch-not-begun')
  if (batch.state === 'not_baked') throw new Refusal('batch-not-baked')
  if (measure.derivation !== null) throw Refusal.at('measureId', 'measure-worked-out')
  mustBePlace(place, measure, batch.trial)
  return judgeValue(entry, { facts, batch, measure, place }, by, new Date(entry.takenAt), null)
}

function judgeCorrection(entry: Correction, facts: ReadingFacts, by: By): ReadingVerdict {
  const wrongId = entry.supersedesId.toLowerCase()
  const wrong = facts.readings.get(wrongId)
  if (!wrong) {
    const [aside] = facts.aside.get(wrongId) ?? []
    if (!aside) throw new Refusal('not-found')
    const isLate = facts.batches.get(aside.batchId)?.trial.isSealed ?? false
    return {
      ...asideOf(entry, aside),
      why: isLate ? 'trial_closed' : 'reading_aside',
      isAgain: isAsideAlready(entry, facts),
    }
  }
  const batch = facts.batches.get(wrong.batchId)
  const measure = facts.measures.get(wrong.measureId)
  if (!batch || !measure) throw new Refusal('not-found')
  const piece = entry.piece ?? null
  // The level goes with the piece: another piece may be of another level.
  const place = {
    batchId: wrong.batchId,
    measureId: wrong.measureId,
    piece,
    factorLevel: piece === null ? null : levelOfPiece(piece, batch.trial.factorLevels),
  }
  const known = cameBefore(entry, { facts, batch, measure, place })
  if (known) return known
  const { isSealed } = batch.trial
  if (!isSealed) mustBeOpen(batch.trial.state)
  // What is only proposed is anybody's to propose, whatever was corrected since.
  if (!isSealed) mustBeTheirsToCorrect(wrong, by)
  if (wrong.isCorrected && !isSealed)
    return {
      ...asideOf(entry, { trialId: batch.trialId, batchId: batch.id }),
      why: 'corrected_meanwhile',
      isAgain: false,
    }
  mustBePlace(place, measure, batch.trial)
  return judgeValue(entry, { facts, batch, measure, place }, by, wrong.takenAt, { wrong, reason: entry.reason })
}

type At = { facts: ReadingFacts; batch: BatchFacts; measure: MeasureFacts; place: ReadingPlace }

/** What there is to say of an entry that is in the book or aside already; null when it is new. */
function cameBefore(entry: ReadingEntry, { facts, batch, measure, place }: At): ReadingVerdict | null {
  const hash = hashOfContent(entry)
  const known = facts.readings.get(entry.id.toLowerCase())
  if (known?.contentHash === hash)
    return {
      outcome: 'again',
      answer: answerOfReading(known, true, measure, facts.places.get(keyOfPlace(place)) ?? []),
    }
  const aside = facts.aside.get(entry.id.toLowerCase())?.find((each) => each.hash === hash)
  if (aside) return { ...asideOf(entry, aside), why: aside.why, isAgain: true }
  return known
    ? { ...asideOf(entry, { trialId: batch.trialId, batchId: batch.id }), why: 'id_taken', isAgain: false }
    : null
}

function judgeValue(
  entry: ReadingEntry,
  { facts, batch, measure, place }: At,
  { actor, now }: By,
  takenAt: Date,
  correction: { wrong: KnownReading; reason: string } | null,
): ReadingVerdict {
  const value = enteredValue(entry, measure)
  const others = (facts.places.get(keyOfPlace(place)) ?? []).filter(({ id }) => id !== correction?.wrong.id)
  const { isSealed } = batch.trial
  const isTaken = others.some(({ repeat }) => repeat === entry.repeat)
  if (isTaken && !isSealed)
    return { ...asideOf(entry, { trialId: batch.trialId, batchId: batch.id }), why: 'place_taken', isAgain: false }
  // A correction in its own place adds nothing; one that goes elsewhere does so there.
  const staysThere =
    correction !== null &&
    keyOfPlace(correction.wrong) === keyOfPlace(place) &&
    correction.wrong.repeat === entry.repeat
  if (!staysThere && !isTaken && !takesRepeat(entry.repeat, measure, others))
    throw new Refusal('no-further-repeat', { count: measure.repeats })
  const ranges = facts.ranges.get(batch.trialId)
  if (!ranges) throw new Error(`no ranges of trial ${batch.trialId}`)
  const range = plausibleRange(measure, ranges)
  mustBeConfirmed(value, range, measure.unit, entry.confirmed ?? false)
  if (isSealed)
    return { ...asideOf(entry, { trialId: batch.trialId, batchId: batch.id }), why: 'trial_closed', isAgain: false }
  const contentHash = hashOfContent(entry)
  const row: ReadingRow = {
    bakeryId: actor.bakeryId,
    id: entry.id.toLowerCase(),
    trialId: batch.trialId,
    ...place,
    repeat: entry.repeat,
    value,
    valueEntered: entry.value,
    unitEntered: entry.unit,
    personId: actor.personId,
    takenAt,
    receivedAt: now,
    supersedesId: correction?.wrong.id ?? null,
    reason: correction?.reason ?? null,
    contentHash,
    plausibleLeast: range.least,
    plausibleMost: range.most,
  }
  const atPlace = [...others, { id: row.id, repeat: row.repeat, value }].sort((a, b) => a.repeat - b.repeat)
  const said = {
    batch: batch.code,
    measure: measure.name,
    piece: place.piece,
    repeat: entry.repeat,
    value: entry.value,
    unit: entry.unit,
    hash: contentHash,
  }
  const after = { ...said, ...(isOutside(row, measure) ? { outsideAndConfirmed: range } : {}) }
  const before = correction && {
    piece: correction.wrong.piece,
    repeat: correction.wrong.repeat,
    value: correction.wrong.valueEntered,
    unit: correction.wrong.unitEntered,
  }
  return {
    outcome: 'ready',
    row,
    answer: answerOfReading(row, false, measure, atPlace),
    note: { after, ...(before ? { before, reason: correction.reason } : {}) },
  }
}

function asideOf(entry: ReadingEntry, { trialId, batchId }: { trialId: string; batchId: string }) {
  return { outcome: 'aside' as const, trialId, batchId, hash: hashOfContent(entry) }
}

function isAsideAlready(entry: ReadingEntry, facts: ReadingFacts): boolean {
  return facts.aside.get(entry.id.toLowerCase())?.some(({ hash }) => hash === hashOfContent(entry)) ?? false
}

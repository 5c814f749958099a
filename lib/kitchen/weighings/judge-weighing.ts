import 'server-only'
import type { ActorOf } from '../../auth/rights'
import type { AsideWhy } from '../../db/generated/enums'
import type { Json } from '../../documents/canonical-text'
import { hashOfText } from '../../documents/hash-of-text'
import { isOddMass } from '../conduct/odd-mass'
import { mustBeTheirsToCorrect } from '../readings/must-be-theirs-to-correct'
import type { BatchFacts } from '../readings/reading-facts'
import { Refusal } from '../refusal'
import { mustBeOpen } from '../trials/must-be-open'
import { judgeLots } from './judge-lots'
import type { WeighingRow } from './keep-weighings'
import { isSameInAll, type TrialLine } from './lines-of-plan'
import type { WeighingEntry } from './log-weighing.input'
import { massEntered } from './mass-entered'
import { weighingContentText } from './weighing-content.input'
import { isSameLine, standingAt, type KnownWeighing, type LinePlace, type WeighingFacts } from './weighing-facts'

export type WeighingVerdict =
  /** To be kept, and what the record says of it. */
  | { outcome: 'ready'; row: WeighingRow; note: { [name: string]: Json } }
  /** In the book already, with just this content. */
  | { outcome: 'again' }
  /** It cannot go where it belongs, by no fault of its own. */
  | { outcome: 'aside'; why: AsideWhy; isAgain: boolean; trialId: string; batchId: string }

/**
 * Judges one entry by the facts of its request, and in no way by which dough it is of: who keeps a line is not told
 * whether it is on target, and is asked the same for every dough of a trial. A line of which all doughs have the same may
 * be ticked; of any other it is said what the scale showed.
 * @throws Refusal not-found, trial-not-approved, trial-closed, trial-stopped, batch-not-begun, batch-not-baked,
 * line-not-in-plan, correction-not-yours, correction-wants-pin, odd-weighing, and what is wrong at a field
 */
export function judgeWeighing(
  entry: WeighingEntry,
  facts: WeighingFacts,
  by: { actor: ActorOf<'log-reading'>; now: Date },
): WeighingVerdict {
  const batch = facts.batches.get(entry.batchId.toLowerCase())
  if (!batch) throw new Refusal('not-found')
  const at = { trialId: batch.trialId, batchId: batch.id }
  const contentHash = hashOfText(weighingContentText(entry))
  const known = facts.weighings.get(entry.id.toLowerCase())
  if (known?.contentHash === contentHash) return { outcome: 'again' }
  const aside = facts.aside.get(entry.id.toLowerCase())?.find(({ hash }) => hash === contentHash)
  if (aside) return { outcome: 'aside', why: aside.why, isAgain: true, trialId: aside.trialId, batchId: aside.batchId }
  if (known) return { outcome: 'aside', why: 'id_taken', isAgain: false, ...at }
  mustTakeWeighings(batch)
  const line = lineOf(entry, facts.lines.get(batch.trialId) ?? [])
  const place: LinePlace = {
    batchId: batch.id,
    stageId: line.stage.id,
    ingredientId: line.ingredient.id,
    part: line.part,
  }
  const massG = massOf(entry, line)
  const lots = judgeLots(entry, place.ingredientId, facts)
  const wrong = wrongOf(entry, facts, place, by, batch.trial.isSealed)
  if (wrong === 'aside') return { outcome: 'aside', why: 'reading_aside', isAgain: false, ...at }
  if (batch.trial.isSealed) return { outcome: 'aside', why: 'trial_closed', isAgain: false, ...at }
  if (wrong?.isCorrected) return { outcome: 'aside', why: 'corrected_meanwhile', isAgain: false, ...at }
  if (!wrong && standingAt(facts, place)) return { outcome: 'aside', why: 'place_taken', isAgain: false, ...at }
  const isWeighed = entry.how === 'weighed'
  const row: WeighingRow = {
    bakeryId: by.actor.bakeryId,
    id: entry.id.toLowerCase(),
    trialId: batch.trialId,
    ...place,
    how: entry.how,
    massG,
    massEntered: isWeighed ? (entry.mass ?? null) : null,
    unitEntered: isWeighed ? (entry.unit ?? null) : null,
    personId: by.actor.personId,
    takenAt: new Date(entry.takenAt),
    receivedAt: by.now,
    supersedesId: wrong?.id ?? null,
    reason: wrong ? (entry.reason ?? null) : null,
    contentHash,
    lots,
    stationId: by.actor.kind === 'station' ? by.actor.stationId : null,
  }
  return {
    outcome: 'ready',
    row,
    // The record is read by people who do not know the dough: a weight in it, or none, would tell it by its code.
    note: {
      batch: batch.code,
      ingredient: line.ingredient.name,
      part: line.part,
      weighing: row.id,
      ...(wrong ? { corrects: wrong.id } : {}),
      hash: contentHash,
    },
  }
}

function mustTakeWeighings({ state, trial }: BatchFacts): void {
  if (!trial.isSealed) mustBeOpen(trial.state)
  if (state === 'waiting') throw new Refusal('batch-not-begun')
  if (state === 'not_baked') throw new Refusal('batch-not-baked')
}

function lineOf(entry: WeighingEntry, lines: readonly TrialLine[]): TrialLine {
  const line = lines.find(
    ({ stage, ingredient, part }) =>
      stage.id === entry.stageId.toLowerCase() &&
      ingredient.id === entry.ingredientId.toLowerCase() &&
      part === entry.part,
  )
  if (!line) throw new Refusal('line-not-in-plan')
  return line
}

/** What the scale showed, g; null where nothing was weighed. */
function massOf(entry: WeighingEntry, line: TrialLine): number | null {
  const { how, mass, unit, confirmed } = entry
  if (how === 'ticked' && !isSameInAll(line)) throw Refusal.at('how', 'differs-so-weigh')
  if (how !== 'weighed') {
    if (mass !== null && mass !== undefined) throw Refusal.at('mass', 'mass-only-where-weighed')
    return null
  }
  if (mass === null || mass === undefined) throw Refusal.at('mass', 'missing')
  if (unit === null || unit === undefined) throw Refusal.at('unit', 'missing')
  const massG = massEntered(mass, unit, 'mass')
  if (
    !confirmed &&
    isOddMass(
      massG,
      line.targets.map((target) => target.massG),
    )
  )
    throw new Refusal('odd-weighing', {}, [{ path: 'mass', code: 'in-which-unit', facts: {} }])
  return massG
}

/** What an entry says was wrong; null where it says nothing was, 'aside' where that waits to be settled itself. */
function wrongOf(
  { supersedesId, reason }: WeighingEntry,
  facts: WeighingFacts,
  place: LinePlace,
  { actor, now }: { actor: ActorOf<'log-reading'>; now: Date },
  isSealed: boolean,
): KnownWeighing | 'aside' | null {
  if (supersedesId === null || supersedesId === undefined) {
    if (reason !== null && reason !== undefined) throw Refusal.at('reason', 'reason-without-correction')
    return null
  }
  if (reason === null || reason === undefined) throw Refusal.at('reason', 'missing')
  const wrong = facts.weighings.get(supersedesId.toLowerCase())
  if (!wrong) {
    if (facts.aside.has(supersedesId.toLowerCase())) return 'aside'
    throw new Refusal('not-found')
  }
  if (!isSameLine(wrong, place)) throw Refusal.at('supersedesId', 'wrong-choice')
  if (!isSealed) mustBeTheirsToCorrect(wrong, { actor, now })
  return wrong
}

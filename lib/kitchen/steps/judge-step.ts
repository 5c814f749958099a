import 'server-only'
import type { ActorOf } from '../../auth/rights'
import type { Json } from '../../documents/canonical-text'
import { hashOfText } from '../../documents/hash-of-text'
import { mustBeTheirsToCorrect } from '../readings/must-be-theirs-to-correct'
import { Refusal } from '../refusal'
import type { StepEntry } from './log-step.input'
import { momentOfStep } from './moment-of-step.input'
import { stepContentText } from './step-content.input'
import type { KnownStep, StepFacts, StepRow } from './step-facts'
import { isSameWhereabouts, stateBySteps, type Whereabouts } from './state-by-steps.input'
import { detailsOfStep, stepDetails } from './step-kinds.input'

export type StepVerdict = { outcome: 'ready'; row: StepRow; note: { [name: string]: Json } } | { outcome: 'again' }

/**
 * Judges one step. It is kept in whatever order it comes and however often somebody says it, also of a dough that is out
 * and of a trial that has ended: what happened on the floor happened. A dough that is under way goes with its steps.
 * @throws Refusal not-found, step-clash, batch-not-begun, batch-not-baked, correction-not-yours, correction-wants-pin, and
 * what is wrong at a field
 */
export function judgeStep(
  entry: StepEntry,
  facts: StepFacts,
  by: { actor: ActorOf<'log-reading'>; now: Date },
): StepVerdict {
  const id = entry.id.toLowerCase()
  const contentHash = hashOfText(stepContentText(entry))
  const known = facts.steps.get(id)
  if (known?.contentHash === contentHash) return { outcome: 'again' }
  if (known) throw new Refusal('step-clash')
  const batchId = entry.batchId.toLowerCase()
  const batch = facts.batches.get(batchId)
  if (!batch) throw new Refusal('not-found')
  if (batch.state === 'waiting') throw new Refusal('batch-not-begun')
  if (batch.state === 'not_baked') throw new Refusal('batch-not-baked')
  const strange = stepDetails.find(
    (detail) => (entry[detail] ?? null) !== null && !(entry.isDone && detailsOfStep[entry.step]?.includes(detail)),
  )
  if (strange) throw Refusal.at(strange, 'not-of-this-step')
  const wrong = wrongOf(entry, facts, by)
  const { step, isDone, agoS } = entry
  const takenAt = new Date(entry.takenAt)
  const clockAheadS = entry.clockAheadS ?? null
  const row: StepRow = {
    bakeryId: by.actor.bakeryId,
    id,
    trialId: batch.trialId,
    batchId,
    step,
    isDone,
    at: new Date(
      momentOfStep({
        takenAt: takenAt.getTime(),
        clockAheadS,
        agoS,
        receivedAt: by.now.getTime(),
        begunAt: batch.begunAt?.getTime() ?? null,
      }),
    ),
    agoS,
    clockAheadS,
    setting: entry.setting ?? null,
    chamberTempC: entry.chamberTempC ?? null,
    place: entry.place ?? null,
    setTempC: entry.setTempC ?? null,
    readTempC: entry.readTempC ?? null,
    steam: entry.steam ?? null,
    beside: entry.beside ?? null,
    personId: by.actor.personId,
    takenAt,
    receivedAt: by.now,
    supersedesId: wrong?.id ?? null,
    reason: wrong ? (entry.reason ?? null) : null,
    contentHash,
  }
  const then = whereaboutsAfter(row, facts)
  return {
    outcome: 'ready',
    row,
    note: {
      batch: batch.code,
      step,
      isDone,
      at: row.at.toISOString(),
      ...(wrong ? { corrects: wrong.id, reason: row.reason } : {}),
      ...(isSameWhereabouts(batch, then) ? {} : { state: then.state, bakedAt: then.bakedAt?.toISOString() ?? null }),
      hash: contentHash,
    },
  }
}

/** Where the dough of a step is once it stands. */
export function whereaboutsAfter(row: StepRow, facts: StepFacts): Whereabouts {
  const dough = facts.batches.get(row.batchId)
  if (!dough) throw new Error('a step is of a dough that was locked')
  const { state, bakedAt, isOpen } = dough
  const steps = [...facts.steps.values()].filter(({ id, batchId }) => batchId === row.batchId && id !== row.id)
  return isOpen ? stateBySteps({ state, bakedAt }, [...steps, row]) : { state, bakedAt }
}

/** The step that an entry says was wrong; null where it says nothing was. */
function wrongOf(
  { batchId, step, isDone, supersedesId, reason }: StepEntry,
  facts: StepFacts,
  by: { actor: ActorOf<'log-reading'>; now: Date },
): KnownStep | null {
  if (supersedesId === null || supersedesId === undefined) {
    if (!isDone) throw Refusal.at('isDone', 'done-unless-corrected')
    if (reason !== null && reason !== undefined) throw Refusal.at('reason', 'reason-without-correction')
    return null
  }
  if (reason === null || reason === undefined) throw Refusal.at('reason', 'missing')
  const wrong = facts.steps.get(supersedesId.toLowerCase())
  if (!wrong) throw new Refusal('not-found')
  if (wrong.batchId !== batchId.toLowerCase() || wrong.step !== step) throw Refusal.at('supersedesId', 'wrong-choice')
  mustBeTheirsToCorrect(wrong, by)
  return wrong
}

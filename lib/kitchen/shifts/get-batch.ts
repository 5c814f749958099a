import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import type { Allergen } from '../../db/generated/enums'
import { signsFoundCause } from '../conduct/signs-found-cause'
import { whyNotTakenOut } from '../conduct/why-not-taken-out'
import { markedIn, marksOfDoughs } from '../checks/marks-of-doughs'
import { boundsOfDay } from '../bounds-of-day'
import { dayInZone } from '../day-in-zone'
import { query } from '../query'
import { firstDecidingOf } from '../readings/first-deciding-reading'
import { currentReadings } from '../readings/current-readings'
import { dueByAge } from '../readings/due-by-age.input'
import { gapsOfBatch } from '../readings/gaps-of-batch'
import { loadUsualVolumes, rangeFactsIn } from '../readings/load-range-facts'
import { loafFigures } from '../readings/loaf-figures'
import { everyMeasureAndAge, inUse } from '../readings/measures-to-read'
import { plausibleRange } from '../readings/plausible-range'
import { piecesToRead } from '../readings/pieces-to-read'
import { outsideOf } from '../readings/range-of-reading'
import { mayCorrect } from '../readings/rules'
import { unitsOfBase } from '../readings/units-of-base'
import { Refusal } from '../refusal'
import { knowsDough } from '../trials/knows-dough'
import { isFrozen, isOpen } from '../trials/rules'
import { courseOfBatch } from '../steps/course-of-batch'
import { lotsToWeigh } from '../weighings/lots-to-weigh'
import { weighingsOfBatch } from '../weighings/weighings-of-batch'
import { tempsOf } from '../water/temps-of.input'
import { waterOfBatch } from '../water/water-of-batch'
import { isFoundOutFrom } from './may-be-found-out'
import { mixingOf } from './mixing-of'
import { mixedIn } from '../batches/mixed-batches'
import { plannedValue } from './planned-value'
import { readDough, readTrialOfDough } from './read-dough'
import { isOutState } from '../conduct/is-out-state'
import { lossesOfTrial } from '../repairs/losses-of-trial'
import { byTurn, needsCleanDown, nextToBegin, undoMs, whyNoUndo } from '../batches/rules'

/**
 * One batch as the floor needs it: what goes in and how much, the planned process, its readings with who and when, and
 * what holds after corrections. It goes by its code: until the readings are closed, what it is and what goes in are for
 * those only who opened the key of its trial or its own. Allergens never hide.
 * Refuses: not-found.
 */
export const getBatch = query({
  name: 'shifts.get-batch',
  input: z.strictObject({ batchId: z.uuid() }),
  right: 'read-shift',
  async run({ db, actor, now, input }) {
    const { bakeryId, personId } = actor
    const asked = { bakeryId, personId, batchId: input.batchId }
    const measuring = everyMeasureAndAge(db, bakeryId)
    const [batch, trial, { measures: everyOne, ageOf }, usualMlPerG] = await Promise.all([
      readDough(db, asked),
      readTrialOfDough(db, asked),
      measuring,
      measuring.then((known) => loadUsualVolumes(db, bakeryId, asked, inUse(known.measures))),
    ])
    // Before its plan is approved a batch is a thought, and the floor knows nothing of it.
    if (!batch || !trial || !isFrozen(trial.state)) throw new Refusal('not-found')
    const measures = inUse(everyOne)
    const ranges = rangeFactsIn(trial, usualMlPerG)
    const { timeZone, dayTurnsAtH, equipment: failedOnce } = trial.bakery
    const isTrialOpen = isOpen(trial.state)
    const current = currentReadings(batch.readings)
    const firstReadAt = firstDecidingOf(batch.readings, everyOne, trial.measureId)
    const temps = tempsOf(
      (code) =>
        current.find(({ measureId }) => everyOne.find(({ id }) => id === measureId)?.code === code)?.value ?? null,
    )
    const isBeforeMixing = isTrialOpen && batch.state === 'weighing' && batch.steps.length === 0
    const [lots, people, losses, marks, water] = await Promise.all([
      // Where nothing is written any more, nothing is offered to be taken from.
      isTrialOpen ? lotsToWeigh(db, bakeryId, trial, dayInZone(now, timeZone)) : new Map(),
      // Asked for only where somebody has still to sign.
      batch.found.some(({ signature }) => signature === null)
        ? db.person.findMany({ where: { bakeryId, endedAt: null }, select: { id: true } })
        : [],
      isOutState(batch.state) ? lossesOfTrial(db, { bakeryId, trialId: batch.trialId, now }) : null,
      failedOnce.length > 0
        ? marksOfDoughs(db, bakeryId, [{ id: batch.id, readings: current, weighings: batch.weighings }], everyOne)
        : [],
      isBeforeMixing
        ? waterOfBatch(db, bakeryId, batch, { temps, day: boundsOfDay(now, { timeZone, dayTurnsAtH }) })
        : null,
    ])
    const ofTrial = mixedIn(trial)
    const own = ofTrial.find(({ id }) => id === batch.id)
    const next = nextToBegin(ofTrial)
    const {
      arm,
      readings,
      toSettle,
      opened,
      weighings,
      steps,
      counts: [count],
      found,
      madeBy,
      mixingDay,
      movedFrom,
      movedAt,
      movedById: _,
      movedRevision: __,
      ...facts
    } = batch
    const loss = losses?.doughs.find(({ id }) => id === batch.id) ?? null
    const mayUndo = isTrialOpen && !loss?.again && whyNoUndo({ batch, personId: actor.personId, now }) === null
    const holds = new Set(current.map(({ id }) => id))
    const level = levelOf(actor, 'correct-reading')
    const pieces = piecesToRead(trial.piecesPerBatch, batch.piecesMade)
    const knows = knowsDough({ trial, opened })
    return {
      ...facts,
      dayNumber: mixingDay.number,
      isOpen: isTrialOpen,
      isNext: next?.id === batch.id,
      /** Why it may not be taken out as what it could be: not baked while it waits, lost or set aside from then on. */
      whyNotOut: whyNotTakenOut({
        to: batch.begunAt === null ? 'not_baked' : 'lost',
        begunAt: batch.begunAt,
        firstReadAt,
        causesNotedAt: batch.causes.map(({ at }) => at),
      }),
      mayBeFoundOut: isTrialOpen && isFoundOutFrom(batch.state),
      /** What was found later, and as what whoever asks may sign it; null where they may not. */
      found: found.map(({ foundBy, signature, ...cause }) => {
        const signs = signsFoundCause({
          personId,
          foundById: foundBy.id,
          people: people.map(({ id }) => id),
        })
        return {
          ...cause,
          who: foundBy.name,
          signed: signature && { who: signature.signedBy.name, isAlone: signature.signsAs === 'alone' },
          maySignAs: signature || 'bar' in signs ? null : signs.as,
        }
      }),
      /** What somebody may take back, and for how long from now, ms; null when there is nothing. */
      undo:
        mayUndo && movedFrom && movedAt ? { to: movedFrom, forMs: movedAt.getTime() + undoMs - now.getTime() } : null,
      firstCode: batch.state === 'waiting' && next && next.id !== batch.id ? next.code : null,
      /** What became of it after it went out, and what still can be done; null while it is not out. */
      loss,
      /** Number of the mixing day that was added for its own. */
      dayAddedAs: losses?.days.find(({ number }) => number === mixingDay.number)?.addedAs ?? null,
      /** For those who may add one where it cannot be baked again any more. */
      mayAddDay: isTrialOpen && levelOf(actor, 'approve-plan') === 'yes',
      /** The batch that it was made for. */
      madeFor: madeBy[0]?.batch ?? null,
      /** Its place in the day, and the others that wait there, with which it can exchange it. */
      turn: own?.turn ?? batch.plannedOrder,
      exchangeable:
        isTrialOpen && batch.state === 'waiting'
          ? ofTrial
              .filter(
                ({ id, state, dayNumber }) => id !== batch.id && state === 'waiting' && dayNumber === mixingDay.number,
              )
              .sort(byTurn)
              .map(({ id, code, turn }) => ({ id, code, turn }))
          : [],
      cleanDownFirst: batch.state === 'waiting' && own !== undefined && needsCleanDown(own, ofTrial),
      /** The batches of its mixing day in their order. */
      day: ofTrial
        .filter(({ dayNumber }) => dayNumber === mixingDay.number)
        .sort(byTurn)
        .map(({ id, code, state }) => ({ id, code, state, isNext: id === next?.id })),
      trial: {
        number: trial.number,
        state: trial.state,
        formulaName: trial.formula.name,
        factorName: trial.factorName,
        factorLevels: trial.factorLevels,
      },
      /** What the dough is, and what goes on the scales; null for whoever does not know it. */
      key: knows
        ? {
            position: arm.position,
            name: arm.name,
            ingredients: [...new Set(arm.lines.map(({ ingredient }) => ingredient.name))],
            mixing: mixingOf(batch.id, arm.position, trial),
          }
        : null,
      /** Line by line what was weighed; who does not know the dough is shown no weight, planned or kept. */
      weighed: weighingsOfBatch({
        plan: trial,
        arm: knows ? arm.position : null,
        entries: weighings,
        lots,
        dayOf: (at) => dayInZone(at, timeZone),
        mayPutRight: ({ person, takenAt, receivedAt }) =>
          isTrialOpen &&
          mayCorrect({
            level,
            personId: actor.personId,
            reading: { personId: person.id, takenAt, receivedAt },
            now,
          }),
      }),
      process: trial.controlVersion,
      course: courseOfBatch(steps, trial.controlVersion),
      /** What its water is to be, the same whoever asks; null once it is mixed. */
      water,
      /** Who counted its pieces last, and what became of them; null where nobody has. */
      count: count ? { ...count, who: count.person.name } : null,
      cautions: cautionsOf(
        arm.lines.map(({ ingredient }) => ingredient),
        knows,
      ),
      pieces,
      measures: measures.map((measure) => ({
        ...measure,
        units: unitsOfBase(measure.unit),
        due: dueByAge(ageOf(measure.id), batch.bakedAt?.getTime() ?? null, now.getTime()),
        range: plausibleRange(measure, ranges),
        planned: plannedValue(measure.code, {
          ...trial.controlVersion,
          // Another one than the control's tells what the dough is.
          waterG: (knows && ranges.plannedWaterG.get(arm.position)) || null,
        }),
      })),
      /** What is missing, unsettled, odd or kept aside; while a batch waits nothing is. */
      gaps:
        batch.state === 'waiting'
          ? []
          : gapsOfBatch({
              measures,
              decidingMeasureId: trial.measureId,
              piecesPerBatch: trial.piecesPerBatch,
              piecesMade: batch.piecesMade,
              readings: current,
              toSettle: toSettle.length,
            }),
      readings: readings.map((reading) => ({
        ...reading,
        outside: outsideOf(reading, measures),
        holds: holds.has(reading.id),
        mayCorrect:
          isTrialOpen &&
          holds.has(reading.id) &&
          mayCorrect({
            level,
            personId: actor.personId,
            reading: { personId: reading.person.id, takenAt: reading.takenAt, receivedAt: reading.receivedAt },
            now,
          }),
      })),
      /** What was read or weighed around a check that failed, of each measure how many readings. */
      marks: marks.map(({ of, ...mark }) => ({ ...mark, ...markedIn(of, everyOne) })),
      figures: loafFigures({ readings: current, measures })[0] ?? null,
    }
  },
})

/** What can hurt somebody at a dough, whether or not they know which one it is. */
function cautionsOf(
  ingredients: readonly {
    name: string
    allergens: Allergen[]
    allergensCheckedAt: Date | null
    dustCaution: boolean
  }[],
  knows: boolean,
) {
  const unchecked = ingredients.filter(({ allergensCheckedAt }) => allergensCheckedAt === null)
  return {
    allergens: [...new Set(ingredients.flatMap(({ allergens }) => allergens))],
    /** How many ingredients nobody has checked for allergens, and which, for whoever knows what is in it. */
    unchecked: { count: unchecked.length, names: knows ? unchecked.map(({ name }) => name) : null },
    isDusty: ingredients.some(({ dustCaution }) => dustCaution),
  }
}

import 'server-only'
import { z } from 'zod'
import { byTurn, unfinishedStates } from '../batches/rules'
import { outState } from '../conduct/out-state.input'
import { countThatStands } from '../batches/count-that-stands'
import { mixedIn, mixedOfTrial } from '../batches/mixed-batches'
import { isByDisplacement } from '../checks/is-by-displacement'
import { instrumentsOfDay } from '../checks/instruments-of-day'
import { dayOfDate } from '../day-of-date'
import { handOver } from '../notes/hand-over'
import { looksColumns } from '../looks-columns'
import { query } from '../query'
import { isReadOfEveryDough } from '../readings/before-mixing.input'
import { currentReadings } from '../readings/current-readings'
import { decidingMeasures } from '../readings/deciding-measures'
import { fromBaseUnit } from '../readings/from-base-unit'
import { loadRangeFacts } from '../readings/load-range-facts'
import { everyMeasureAndAge, inUse } from '../readings/measures-to-read'
import { piecesToRead } from '../readings/pieces-to-read'
import { piecesOf, repeatsAt } from '../readings/repeats-at'
import { unitToEnter } from '../readings/unit-to-enter'
import { plausibleRange } from '../readings/plausible-range'
import { levelOfPiece } from '../readings/rules'
import { toBaseUnit } from '../readings/to-base-unit'
import { plannedTimes, stepOnFloor } from '../steps/step-on-floor'
import { sureOf } from '../sure-of'
import { openStates } from '../trials/rules'
import { cautionsOfDough, ingredientForCautions } from '../trials/cautions-of-dough'
import { loadWaters } from '../water/load-waters'
import { nextDough } from './next-dough'
import { outDoughs } from './out-doughs'

/** A tablet shows what is baked now; of more trials than this at once it says that there are more. */
const mostTrials = 20

/**
 * What a tablet reads: the doughs that are under way or baked, by their codes, with their allergens, every place that
 * can be read on them, what stands there and when it falls due; of each trial the dough that is to be begun next, with
 * those that wait after it; and what is out, with what can still be done. It is kept on the tablet, so it is the same for everybody: what a code stands for, weights and costs are not in it, whoever
 * is on the tablet and whatever they opened at the desk. What water is told by is the control's, for every dough alike.
 */
export const getFloor = query({
  name: 'stations.get-floor',
  input: z.strictObject({}),
  right: 'read-shift',
  async run({ db, actor, now }) {
    const { bakeryId } = actor
    const [{ temperatureUnits, locale, ...looks }, { measures: everyOne, ageOf }, notes, { day, instruments }, trials] =
      await Promise.all([
        db.bakery.findUniqueOrThrow({
          where: { bakeryId },
          select: { temperatureUnits: true, locale: true, ...looksColumns },
        }),
        everyMeasureAndAge(db, bakeryId),
        handOver(db, bakeryId, now),
        instrumentsOfDay(db, bakeryId, now),
        db.trial.findMany({
          where: { bakeryId, state: { in: openStates } },
          select: {
            id: true,
            number: true,
            measureId: true,
            piecesPerBatch: true,
            factorLevels: true,
            formula: { select: { name: true } },
            controlVersion: { select: plannedTimes },
            ...mixedOfTrial,
            _count: { select: { batches: { where: { state: { in: [...outState.options] } } } } },
            batches: {
              where: { state: { in: unfinishedStates } },
              select: {
                id: true,
                code: true,
                state: true,
                revision: true,
                begunAt: true,
                bakedAt: true,
                piecesMade: true,
                mixingDay: { select: { number: true, day: true } },
                arm: { select: { lines: { select: { ingredient: { select: ingredientForCautions } } } } },
                counts: countThatStands,
                steps: { select: stepOnFloor, orderBy: [{ at: 'asc' }, { id: 'asc' }] },
                readings: {
                  select: {
                    id: true,
                    measureId: true,
                    piece: true,
                    repeat: true,
                    value: true,
                    valueEntered: true,
                    unitEntered: true,
                    takenAt: true,
                    receivedAt: true,
                    supersedesId: true,
                    person: { select: { id: true, name: true } },
                  },
                },
              },
            },
          },
          orderBy: { number: 'asc' },
          take: mostTrials + 1,
        }),
      ])
    const measures = inUse(everyOne)
    const read = measures.filter(({ derivation }) => derivation === null)
    const told = trials.slice(0, mostTrials)
    const shown = told.filter(({ batches }) => batches.length > 0)
    const underWay = shown.filter(({ batches }) => batches.some(({ state }) => state !== 'waiting'))
    const waters = await loadWaters(
      db,
      bakeryId,
      underWay.map(({ id }) => id),
      day,
    )
    const out = await Promise.all(
      told
        .filter(({ _count }) => _count.batches > 0)
        .map(async ({ id: trialId, ...trial }) =>
          (await outDoughs(db, { bakeryId, trialId, now, beganAt: day.beganAt })).map((dough) => ({
            ...nameOf(trial),
            ...dough,
          })),
        ),
    )
    const ofTrials = await Promise.all(
      shown.map(async (trial) => {
        const ranges = await loadRangeFacts(db, bakeryId, { trialId: trial.id }, read)
        const mixed = mixedIn(trial)
        const order = mixed.sort(byTurn).map(({ id }) => id)
        const deciding = decidingMeasures(measures, trial.measureId)
        const ofTrial = nameOf(trial)
        const next = nextDough(trial.batches, mixed)
        const doughs = trial.batches
          .filter(({ state }) => state !== 'waiting')
          .sort((a, b) => order.indexOf(a.id) - order.indexOf(b.id))
          .map(
            ({
              id,
              code,
              state,
              revision,
              begunAt,
              bakedAt,
              piecesMade,
              mixingDay,
              arm,
              readings,
              steps,
              counts: [count],
            }) => {
              const current = currentReadings(readings)
              const pieces = piecesToRead(trial.piecesPerBatch, piecesMade)
              return {
                ...ofTrial,
                ...cautionsOfDough(arm),
                id,
                code,
                state,
                /** Whoever takes it out names it, so that nobody takes out what has changed meanwhile. */
                revision,
                begunAt: begunAt?.toISOString() ?? null,
                bakedAt: bakedAt?.toISOString() ?? null,
                dayNumber: mixingDay.number,
                day: dayOfDate(mixingDay.day),
                /** Of the control, and so the same for every dough. */
                times: trial.controlVersion,
                water: waters.get(trial.id) ?? null,
                count: count ? countOnFloor(count) : null,
                steps: steps.map(({ person, ...step }) => ({ ...step, who: person.name, personId: person.id })),
                turn: mixed.find((each) => each.id === id)?.turn ?? null,
                measures: read.map((measure) => {
                  const unit = unitToEnter(measure.unit, temperatureUnits)
                  const range = plausibleRange(measure, ranges)
                  const own = current.filter(({ measureId }) => measureId === measure.id)
                  return {
                    id: measure.id,
                    code: measure.code,
                    name: measure.name,
                    unit,
                    digits: measure.digits,
                    least: inUnit(range.least, unit, measure.unit),
                    most: inUnit(range.most, unit, measure.unit),
                    level: measure.level,
                    byDisplacement: isByDisplacement(measure),
                    /** With these a tablet finds out by itself that two disagree: base = times × value + plus. */
                    repeats: measure.repeats,
                    repeatLimit: measure.repeatLimit,
                    toBase: lineToBase(unit, measure.unit),
                    /** At what age out of the oven it is read, by which it falls due. */
                    ...ageOf(measure.id),
                    /** Without it the dough is not read whole. */
                    isWanted: deciding.has(measure.id) || isReadOfEveryDough(measure),
                    places: piecesOf(measure, pieces).flatMap((piece) =>
                      repeatsAt(
                        own.filter((each) => each.piece === piece),
                        measure,
                      ).map(({ repeat, reading }) => ({
                        piece,
                        factorLevel: piece === null ? null : levelOfPiece(piece, trial.factorLevels),
                        repeat,
                        reading: reading && {
                          id: reading.id,
                          personId: reading.person.id,
                          receivedAt: reading.receivedAt.toISOString(),
                          inBase: reading.value,
                          value: reading.valueEntered,
                          unit: reading.unitEntered,
                          at: reading.takenAt.toISOString(),
                          who: reading.person.name,
                        },
                      })),
                    ),
                  }
                }),
              }
            },
          )
        return { doughs, next: next ? [{ ...ofTrial, ...next }] : [] }
      }),
    )
    return {
      /** By the book’s clock, by which a tablet knows how far its own is off. */
      now: now.toISOString(),
      temperatureUnit: unitToEnter('°C', temperatureUnits),
      /** When somebody is called to look at a dough. */
      looks,
      doughs: ofTrials.flatMap(({ doughs }) => doughs),
      next: ofTrials.flatMap(({ next }) => next),
      out: out.flat(),
      /** In which days are written. */
      locale,
      /** Whether there are trials that no tablet shows. */
      isCut: trials.length > mostTrials,
      /** The bakery's day, and what is checked on it, once. */
      day: { beganAt: day.beganAt.toISOString(), endsAt: day.endsAt.toISOString() },
      instruments: instruments.map(({ last, ...instrument }) => ({
        ...instrument,
        last: last && { at: last.at.toISOString(), isGood: last.isGood, offMl: last.offMl },
      })),
      /** What was left for this shift; everybody reads every note. */
      notes: notes.map(({ id, text, who, takenAt, batch }) => ({
        id,
        text,
        who,
        at: takenAt.toISOString(),
        code: batch?.code ?? null,
      })),
    }
  },
})

function nameOf({ number, formula }: { number: number; formula: { name: string } }) {
  return { trialNumber: number, formulaName: formula.name }
}

function countOnFloor<Count extends { at: Date; person: { name: string } }>({ at, person, ...count }: Count) {
  return { ...count, at: at.toISOString(), who: person.name }
}

function inUnit(value: number, unit: string, baseUnit: string): number {
  return sureOf(fromBaseUnit({ value, unit, baseUnit }), 'a unit of the measure')
}

/** Units are lines of each other, so two points of one tell it. */
function lineToBase(unit: string, baseUnit: string): { times: number; plus: number } {
  const at = (number: string) => sureOf(toBaseUnit({ number, unit, baseUnit }), 'a unit of the measure')
  return { times: at('1') - at('0'), plus: at('0') }
}

import 'server-only'
import { z } from 'zod'
import { oddTime } from '../conduct/odd-time'
import { query } from '../query'
import { Refusal } from '../refusal'
import { isFrozen } from '../trials/rules'
import { currentReadings } from './current-readings'
import { offAge } from './due-by-age.input'
import { everyMeasureAndAge } from './measures-to-read'
import { outsideOf } from './range-of-reading'

/**
 * Every reading of a batch as it was entered, in the order in which they came, corrected ones beside what took their
 * place, with what is odd about each. It names the batch by its code and nothing that goes in.
 * Refuses: not-found.
 */
export const getReadingLog = query({
  name: 'readings.get-reading-log',
  input: z.strictObject({ batchId: z.uuid() }),
  right: 'read-shift',
  async run({ db, actor: { bakeryId }, input: { batchId } }) {
    const [batch, { measures, ageOf }] = await Promise.all([
      db.batch.findUnique({
        where: { bakeryId_id: { bakeryId, id: batchId } },
        select: {
          code: true,
          begunAt: true,
          bakedAt: true,
          mixingDay: { select: { number: true } },
          trial: { select: { number: true, state: true, formula: { select: { name: true } } } },
          readings: {
            select: {
              id: true,
              batchId: true,
              measureId: true,
              piece: true,
              factorLevel: true,
              valueEntered: true,
              unitEntered: true,
              value: true,
              takenAt: true,
              receivedAt: true,
              plausibleLeast: true,
              plausibleMost: true,
              supersedesId: true,
              reason: true,
              person: { select: { name: true } },
              fromSheet: { select: { sheet: { select: { writtenBy: { select: { name: true } } } } } },
            },
            orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
          },
        },
      }),
      everyMeasureAndAge(db, bakeryId),
    ])
    if (!batch || !isFrozen(batch.trial.state)) throw new Refusal('not-found')
    const { code, begunAt, bakedAt, mixingDay, trial, readings } = batch
    const holds = new Set(currentReadings(readings).map(({ id }) => id))
    return {
      code,
      dayNumber: mixingDay.number,
      trialNumber: trial.number,
      formulaName: trial.formula.name,
      /** Ended ones as well: what was read by them stands. */
      measures: measures.map(({ id, code, name, unit, digits }) => ({ id, code, name, unit, digits })),
      readings: readings.map(({ fromSheet, person, ...reading }) => {
        const { id, measureId, piece, factorLevel, valueEntered, unitEntered, takenAt, receivedAt, reason } = reading
        return {
          id,
          measureId,
          piece,
          factorLevel,
          valueEntered,
          unitEntered,
          takenAt,
          receivedAt,
          reason,
          who: person.name,
          /** Who wrote it on paper, from which somebody put it into the book later; null where it came by itself. */
          paperBy: fromSheet?.sheet.writtenBy.name ?? null,
          outside: outsideOf(reading, measures),
          /** What is odd about the time that the device said; a dough that was begun on paper was begun here later. */
          oddTime: fromSheet ? null : oddTime({ takenAt, receivedAt, begunAt }),
          /** Whether it was taken at another age of the loaf than its measure says. */
          offAge: offAge(ageOf(measureId), bakedAt?.getTime() ?? null, takenAt.getTime()),
          holds: holds.has(id),
        }
      }),
    }
  },
})

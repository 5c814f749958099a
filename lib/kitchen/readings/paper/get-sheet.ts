import 'server-only'
import { z } from 'zod'
import { dayInZone } from '../../day-in-zone'
import { dayOfDate } from '../../day-of-date'
import { query } from '../../query'
import { Refusal } from '../../refusal'
import { cautionsOfDough, ingredientForCautions } from '../../trials/cautions-of-dough'
import { isFrozen, isOpen } from '../../trials/rules'
import { isReadOfEveryDough } from '../before-mixing.input'
import { currentReadings } from '../current-readings'
import { decidingMeasures } from '../deciding-measures'
import { everyMeasure, inUse } from '../measures-to-read'
import { piecesToRead } from '../pieces-to-read'
import { piecesOf, repeatsAt } from '../repeats-at'
import { levelOfPiece } from '../rules'
import { unitToEnter } from '../unit-to-enter'

/**
 * A dough as a sheet of paper has it: every place that can be read on it, in the order of the sheet, with what stands there
 * already, and what is printed beside a piece. It goes by its code; what it is and its weights are not told here, and its
 * allergens never hide.
 * Refuses: not-found.
 */
export const getSheet = query({
  name: 'readings.get-sheet',
  input: z.strictObject({ batchId: z.uuid() }),
  right: 'read-shift',
  async run({ db, actor: { bakeryId, personId }, now, input }) {
    const [batch, everyOne, bakery, people] = await Promise.all([
      db.batch.findUnique({
        where: { bakeryId_id: { bakeryId, id: input.batchId } },
        select: {
          id: true,
          code: true,
          state: true,
          piecesMade: true,
          mixingDay: { select: { number: true, day: true } },
          arm: { select: { lines: { select: { ingredient: { select: ingredientForCautions } } } } },
          trial: {
            select: {
              number: true,
              state: true,
              measureId: true,
              piecesPerBatch: true,
              factorName: true,
              factorLevels: true,
              formula: { select: { name: true } },
            },
          },
          readings: {
            select: {
              id: true,
              measureId: true,
              piece: true,
              repeat: true,
              value: true,
              valueEntered: true,
              unitEntered: true,
              receivedAt: true,
              supersedesId: true,
            },
          },
        },
      }),
      everyMeasure(db, bakeryId),
      db.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { temperatureUnits: true, timeZone: true } }),
      db.person.findMany({
        where: { bakeryId, endedAt: null },
        select: { id: true, name: true },
        orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      }),
    ])
    if (!batch || !isFrozen(batch.trial.state)) throw new Refusal('not-found')
    const { trial } = batch
    const current = currentReadings(batch.readings)
    const deciding = decidingMeasures(everyOne, trial.measureId)
    const pieces = piecesToRead(trial.piecesPerBatch, batch.piecesMade)
    return {
      id: batch.id,
      code: batch.code,
      trialNumber: trial.number,
      formulaName: trial.formula.name,
      dayNumber: batch.mixingDay.number,
      day: dayOfDate(batch.mixingDay.day),
      factorName: trial.factorName,
      /** Something may still be read on it. */
      isOpen: isOpen(trial.state) && batch.state !== 'waiting' && batch.state !== 'not_baked',
      pieces: piecesOf({ level: 'piece' }, pieces).map((piece) => ({
        piece: piece ?? 0,
        factorLevel: levelOfPiece(piece ?? 0, trial.factorLevels),
      })),
      ...cautionsOfDough(batch.arm),
      measures: inUse(everyOne)
        .filter(({ derivation }) => derivation === null)
        .map((measure) => ({
          id: measure.id,
          code: measure.code,
          name: measure.name,
          level: measure.level,
          unit: unitToEnter(measure.unit, bakery.temperatureUnits),
          /** The trial rests on it, or every dough is read so. */
          isWanted: deciding.has(measure.id) || isReadOfEveryDough(measure),
          places: piecesOf(measure, pieces).flatMap((piece) =>
            repeatsAt(
              current.filter((each) => each.measureId === measure.id && each.piece === piece),
              measure,
            ).map(({ repeat, reading }) => ({
              piece,
              factorLevel: piece === null ? null : levelOfPiece(piece, trial.factorLevels),
              repeat,
              reading: reading && { value: reading.valueEntered, unit: reading.unitEntered },
            })),
          ),
        })),
      today: dayInZone(now, bakery.timeZone),
      people,
      /** Whoever asks, who most often wrote it too. */
      meId: personId,
    }
  },
})

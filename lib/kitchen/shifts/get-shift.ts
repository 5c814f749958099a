import 'server-only'
import { z } from 'zod'
import { dayOfDate } from '../day-of-date'
import { query } from '../query'
import { currentReadings } from '../readings/current-readings'
import { gapsOfBatch } from '../readings/gaps-of-batch'
import { measuresToRead } from '../readings/measures-to-read'
import { readingsForGaps } from '../readings/readings-for-gaps'
import { mixedBatches } from './mixed-batches'
import { byPlan, needsCleanDown, nextToBegin } from './rules'

/**
 * What is to be baked: every approved trial with its batches in their drawn order, which one is to be begun next, and
 * what is still to be read on those that are baked. Batches go by their codes; what is in them is not told here.
 */
export const getShift = query({
  name: 'shifts.get-shift',
  input: z.strictObject({}),
  right: 'read-work',
  async run({ db, actor }) {
    const { bakeryId } = actor
    const measures = await measuresToRead(db, bakeryId)
    const trials = await db.trial.findMany({
      where: { bakeryId, state: { in: ['approved', 'baking'] } },
      select: {
        id: true,
        number: true,
        state: true,
        measureId: true,
        piecesPerBatch: true,
        formula: { select: { name: true } },
        batches: {
          select: {
            id: true,
            code: true,
            kind: true,
            state: true,
            stateWhy: true,
            plannedOrder: true,
            piecesMade: true,
            begunAt: true,
            doneAt: true,
            mixingDay: { select: { number: true, day: true } },
          },
        },
        readings: { select: readingsForGaps },
      },
      orderBy: { number: 'asc' },
      take: 50,
    })
    return Promise.all(
      trials.map(async ({ batches, readings, ...trial }) => {
        const mixed = await mixedBatches(db, bakeryId, trial.id)
        const current = currentReadings(readings)
        const next = nextToBegin(mixed)
        const inOrder = batches
          .map(({ mixingDay, piecesMade, ...batch }) => {
            const own = mixed.find(({ id }) => id === batch.id)
            const isRead = batch.state === 'baked' || batch.state === 'measured'
            return {
              ...batch,
              dayNumber: mixingDay.number,
              day: dayOfDate(mixingDay.day),
              isNext: batch.id === next?.id,
              cleanDownFirst: batch.state === 'waiting' && own !== undefined && needsCleanDown(own, mixed),
              missing: isRead
                ? gapsOfBatch({
                    measures,
                    decidingMeasureId: trial.measureId,
                    piecesPerBatch: trial.piecesPerBatch,
                    piecesMade,
                    readings: current.filter(({ batchId }) => batchId === batch.id),
                  }).flatMap((gap) => (gap.kind === 'missing' ? [{ name: gap.measure.name, have: gap.have, of: gap.of }] : []))
                : [],
            }
          })
          .sort(byPlan)
        return { id: trial.id, number: trial.number, state: trial.state, formulaName: trial.formula.name, batches: inOrder }
      }),
    )
  },
})

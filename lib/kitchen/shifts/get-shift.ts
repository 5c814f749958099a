import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import type { BatchState } from '../../db/generated/enums'
import { after } from '../after.input'
import { instrumentsOfDay } from '../checks/instruments-of-day'
import { dayOfDate } from '../day-of-date'
import { keyParts } from '../page-cursor'
import { query } from '../query'
import { isToSettle } from '../readings/is-to-settle'
import { currentReadings } from '../readings/current-readings'
import { dueByAge } from '../readings/due-by-age.input'
import { gapsOfBatch } from '../readings/gaps-of-batch'
import { everyMeasureAndAge, inUse } from '../readings/measures-to-read'
import { readingsForGaps } from '../readings/readings-for-gaps'
import { readPage } from '../read-page'
import { openStates } from '../trials/rules'
import { mixedIn, mixedOfTrial } from '../batches/mixed-batches'
import { byTurn, isOver, needsCleanDown, nextToBegin, underWayStates } from '../batches/rules'
import { isOutState } from '../conduct/is-out-state'
import { lossesOfTrial } from '../repairs/losses-of-trial'
import { courseOfBatch } from '../steps/course-of-batch'
import { plannedTimes } from '../steps/step-on-floor'
import { sureOf } from '../sure-of'

/** Each with a rack of its own, so a screen holds few. */
const trialsOnPage = 20

/**
 * What is to be baked, a page of trials at a time: every approved trial with its batches in their order, which one is to
 * be begun next, what is still to be read on those that are baked and from when on, and which can be baked again; and how many batches of all of them wait or
 * are under way, and how many entries are kept aside. Batches go by their codes; what is in them is not told here.
 */
export const getShift = query({
  name: 'shifts.get-shift',
  input: z.strictObject({ after }),
  right: 'read-shift',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const open = { bakeryId, state: { in: openStates } }
    const [{ measures: everyOne, ageOf }, states, keptAside, { instruments }, page] = await Promise.all([
      everyMeasureAndAge(db, bakeryId),
      db.batch.groupBy({ by: ['state'], where: { bakeryId, trial: open }, _count: true }),
      levelOf(actor, 'settle-entries') === 'yes' ? db.entryToSettle.count({ where: { bakeryId, ...isToSettle } }) : 0,
      instrumentsOfDay(db, bakeryId, now),
      readPage({
        bakeryId,
        list: 'shift',
        after: input.after,
        count: () => db.trial.count({ where: open }),
        length: trialsOnPage,
        key: z.tuple([keyParts.number]),
        read: (beyond, take) =>
          db.trial.findMany({
            where: { ...open, ...(beyond && { number: { gt: beyond[0] } }) },
            select: {
              id: true,
              number: true,
              state: true,
              measureId: true,
              piecesPerBatch: true,
              formula: { select: { name: true } },
              controlVersion: { select: plannedTimes },
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
                  bakedAt: true,
                  doneAt: true,
                  mixingDay: { select: { number: true, day: true } },
                  steps: { select: { id: true, step: true, isDone: true, supersedesId: true, at: true } },
                },
              },
              readings: { select: readingsForGaps },
              ...mixedOfTrial,
            },
            orderBy: { number: 'asc' },
            take,
          }),
        keyOf: ({ number }) => [number],
      }),
    ])
    const measures = inUse(everyOne)
    const batchesIn = (...wanted: BatchState[]) =>
      states.reduce((sum, { state, _count }) => sum + (wanted.includes(state) ? _count : 0), 0)
    const trials = await Promise.all(
      page.rows.map(async ({ batches, readings, controlVersion, arms, repairs, ...trial }) => {
        const mixed = mixedIn({ arms, repairs })
        const losses = batches.some(({ state }) => isOutState(state))
          ? (await lossesOfTrial(db, { bakeryId, trialId: trial.id, now })).doughs
          : []
        const waiting = mixed.filter(({ state }) => state === 'waiting').sort(byTurn)
        const current = currentReadings(readings)
        const next = nextToBegin(mixed)
        const inOrder = batches
          .map(({ mixingDay, piecesMade, bakedAt, steps, ...batch }) => {
            const own = sureOf(
              mixed.find(({ id }) => id === batch.id),
              'a batch of the trial',
            )
            // What waits before it is mixed before it.
            const before = waiting[waiting.indexOf(own) - 1]
            const isRead = batch.state === 'baked' || batch.state === 'measured'
            return {
              ...batch,
              dayNumber: mixingDay.number,
              day: dayOfDate(mixingDay.day),
              isNext: batch.id === next?.id,
              /** What runs for it, while it is under way. */
              runs: isOver(batch.state) ? null : courseOfBatch(steps, controlVersion).runs,
              turn: own.turn,
              cleanDownFirst: batch.state === 'waiting' && needsCleanDown(own, mixed, before),
              /** Code of the batch that was made for it. */
              againAs: losses.find(({ id }) => id === batch.id)?.again?.code ?? null,
              missing: isRead
                ? gapsOfBatch({
                    measures,
                    decidingMeasureId: trial.measureId,
                    piecesPerBatch: trial.piecesPerBatch,
                    piecesMade,
                    readings: current.filter(({ batchId }) => batchId === batch.id),
                    // The rack says what is to be read, and nothing else.
                    toSettle: 0,
                  }).flatMap((gap) =>
                    gap.kind === 'missing'
                      ? [
                          {
                            code: gap.measure.code,
                            name: gap.measure.name,
                            have: gap.have,
                            of: gap.of,
                            due: dueByAge(ageOf(gap.measure.id), bakedAt?.getTime() ?? null, now.getTime()),
                          },
                        ]
                      : [],
                  )
                : [],
            }
          })
          .sort(byTurn)
        return {
          id: trial.id,
          number: trial.number,
          state: trial.state,
          formulaName: trial.formula.name,
          batches: inOrder,
          /** Batches that can be baked again. */
          toBakeAgain: losses.filter(({ whyNot }) => whyNot === null),
        }
      }),
    )
    return {
      trials: { ...page, rows: trials },
      waiting: batchesIn('waiting'),
      underWay: batchesIn(...underWayStates),
      /** How many entries wait to be settled, for those who may; nothing for others. */
      keptAside,
      /** Scales, thermometers and volume gauges in use: how many are not checked today, and which failed their last check. */
      checks: {
        count: instruments.length,
        toDo: instruments.filter(({ last }) => !last?.isToday).length,
        failed: instruments.filter(({ last }) => last?.isGood === false).map(({ name }) => name),
      },
    }
  },
})

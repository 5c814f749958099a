import 'server-only'
import { groupBy } from '../../calc/group-by'
import type { DeskActor } from '../../auth/actor'
import type { Db } from '../../db/client'
import type { Prisma } from '../../db/generated/client'
import { dateOfDay, dayOfDate } from '../day-of-date'
import { currentReadings } from '../readings/current-readings'
import { gapsOfBatch } from '../readings/gaps-of-batch'
import { measuresToRead } from '../readings/measures-to-read'
import { readingsForGaps } from '../readings/readings-for-gaps'
import { underWayStates } from '../batches/rules'
import { openStates } from '../trials/rules'
import { fewOf } from './few-of'

/** Doughs that are begun and not measured yet, the one that was begun first at the top, with how many readings each still misses. */
export async function doughsUnderWay(db: Db, { bakeryId }: DeskActor) {
  const where = {
    bakeryId,
    state: { in: underWayStates },
    trial: { state: { in: openStates } },
  } satisfies Prisma.BatchWhereInput
  const few = await fewOf(
    (take) =>
      db.batch.findMany({
        where,
        select: {
          id: true,
          code: true,
          state: true,
          begunAt: true,
          piecesMade: true,
          trial: {
            select: { number: true, measureId: true, piecesPerBatch: true, formula: { select: { name: true } } },
          },
        },
        orderBy: [{ begunAt: 'asc' }, { id: 'asc' }],
        take,
      }),
    () => db.batch.count({ where }),
  )
  if (few.rows.length === 0) return { ...few, rows: [] }
  const [measures, read] = await Promise.all([
    measuresToRead(db, bakeryId),
    db.reading.findMany({
      where: { bakeryId, batchId: { in: few.rows.map(({ id }) => id) } },
      select: readingsForGaps,
    }),
  ])
  const readings = groupBy(currentReadings(read), ({ batchId }) => batchId)
  const rows = few.rows.map(({ id, code, state, begunAt, piecesMade, trial }) => {
    const gaps = gapsOfBatch({
      measures,
      decidingMeasureId: trial.measureId,
      piecesPerBatch: trial.piecesPerBatch,
      piecesMade,
      readings: readings.get(id) ?? [],
      toSettle: 0,
    })
    // What else is still so is told on the dough's own page.
    const missing = gaps.reduce((sum, gap) => sum + (gap.kind === 'missing' ? gap.of - gap.have : 0), 0)
    return { batchId: id, code, state, missing, number: trial.number, formula: trial.formula.name, since: begunAt }
  })
  return { ...few, rows }
}

/** Mixing days that are due and have doughs left to begin, the earliest first. @param today YYYY-MM-DD, in the bakery's zone */
export function daysToMix(db: Db, { bakeryId }: DeskActor, today: string) {
  const left = { kind: 'dough', state: 'waiting' } as const
  const where = {
    bakeryId,
    day: { lte: dateOfDay(today) },
    trial: { state: { in: openStates } },
    batches: { some: left },
  } satisfies Prisma.MixingDayWhereInput
  return fewOf(
    async (take) => {
      const days = await db.mixingDay.findMany({
        where,
        select: {
          id: true,
          number: true,
          day: true,
          trial: { select: { number: true, formula: { select: { name: true } } } },
          _count: { select: { batches: { where: left } } },
        },
        orderBy: [{ day: 'asc' }, { id: 'asc' }],
        take,
      })
      return days.map(({ number, day, trial, _count }) => ({
        dayNumber: number,
        day: dayOfDate(day) ?? today,
        doughs: _count.batches,
        number: trial.number,
        formula: trial.formula.name,
      }))
    },
    () => db.mixingDay.count({ where }),
  )
}

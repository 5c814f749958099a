import 'server-only'
import { groupBy } from '../../calc/group-by'
import type { Db, Tx } from '../../db/client'
import type { BatchWhereInput, ReadingWhereInput } from '../../db/generated/models'
import { countToSettle } from './count-to-settle'
import { currentReadings } from './current-readings'
import { gapsOfBatch, type Gap, type GapMeasure, type GapReading } from './gaps-of-batch'
import { measuresToRead } from './measures-to-read'
import { readingsForGaps } from './readings-for-gaps'

export type BatchGaps = { batchId: string; code: string; gaps: Gap[] }

/** What is still so with the measured doughs of a trial, in their drawn order; doughs without a gap are left out. */
export function gapsOfTrial(from: Db | Tx, bakeryId: string, trialId: string): Promise<BatchGaps[]> {
  return gapsOf(from, bakeryId, trialId, { kind: 'dough', state: 'measured' })
}

/** What is still so with one batch, whatever its state. */
export async function gapsOfDough(from: Db | Tx, bakeryId: string, trialId: string, batchId: string): Promise<Gap[]> {
  const [batch] = await gapsOf(from, bakeryId, trialId, { id: batchId })
  return batch?.gaps ?? []
}

async function gapsOf(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
  which: Pick<BatchWhereInput, 'id' | 'kind' | 'state'>,
): Promise<BatchGaps[]> {
  // Readings and measures don't wait for the trial, and rows come faster than as a list within each batch.
  const [trial, read, measures, toSettle] = await Promise.all([
    from.trial.findUnique({
      where: { bakeryId_id: { bakeryId, id: trialId } },
      select: {
        measureId: true,
        piecesPerBatch: true,
        batches: {
          where: which,
          orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
          select: { id: true, code: true, piecesMade: true },
        },
      },
    }),
    readingsToJudge(from, bakeryId, { trialId, batch: which }),
    measuresToRead(from, bakeryId),
    countToSettle(from, bakeryId, trialId),
  ])
  return trial
    ? gapsOfBatches({ trial, measures, batches: trial.batches, readings: currentReadings(read), toSettle })
    : []
}

/** Readings with what it takes to tell which hold, and what is missing, unsettled or odd. In one order, so that the same readings are the same facts to the last bit. */
function readingsToJudge(from: Db | Tx, bakeryId: string, which: Pick<ReadingWhereInput, 'trialId' | 'batch'>) {
  return from.reading.findMany({ where: { bakeryId, ...which }, select: readingsForGaps, orderBy: { id: 'asc' } })
}

/** What is still so with batches of a trial, in their order; those without a gap are left out. @param readings those that hold, of these batches and others; toSettle of `countToSettle` */
export function gapsOfBatches(q: {
  trial: { measureId: string; piecesPerBatch: number }
  measures: readonly GapMeasure[]
  batches: readonly { id: string; code: string; piecesMade: number | null }[]
  readings: readonly (GapReading & { batchId: string })[]
  toSettle: ReadonlyMap<string, number>
}): BatchGaps[] {
  const { trial, measures } = q
  const ofBatch = groupBy(q.readings, ({ batchId }) => batchId)
  return q.batches
    .map(({ id, code, piecesMade }) => ({
      batchId: id,
      code,
      gaps: gapsOfBatch({
        measures,
        decidingMeasureId: trial.measureId,
        piecesPerBatch: trial.piecesPerBatch,
        piecesMade,
        readings: ofBatch.get(id) ?? [],
        toSettle: q.toSettle.get(id) ?? 0,
      }),
    }))
    .filter(({ gaps }) => gaps.length > 0)
}

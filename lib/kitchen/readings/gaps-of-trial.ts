import 'server-only'
import { groupBy } from '../../calc/group-by'
import type { Db, Tx } from '../../db/client'
import type { BatchWhereInput } from '../../db/generated/models'
import { currentReadings } from './current-readings'
import { gapsOfBatch, type Gap } from './gaps-of-batch'
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

async function gapsOf(from: Db | Tx, bakeryId: string, trialId: string, which: Pick<BatchWhereInput, 'id' | 'kind' | 'state'>): Promise<BatchGaps[]> {
  // Readings and measures don't wait for the trial, and rows come faster than as a list within each batch.
  const [trial, read, measures] = await Promise.all([
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
    from.reading.findMany({ where: { bakeryId, trialId, batch: which }, select: readingsForGaps }),
    measuresToRead(from, bakeryId),
  ])
  if (!trial) return []
  const { measureId, piecesPerBatch, batches } = trial
  const ofBatch = groupBy(currentReadings(read), ({ batchId }) => batchId)
  return batches
    .map(({ id, code, piecesMade }) => ({ batchId: id, code, gaps: gapsOfBatch({ measures, decidingMeasureId: measureId, piecesPerBatch, piecesMade, readings: ofBatch.get(id) ?? [] }) }))
    .filter(({ gaps }) => gaps.length > 0)
}

import 'server-only'
import type { Tx } from '../../db/client'
import { currentReadings } from './current-readings'

type Place = { batchId: string; measureId: string; piece: number | null; factorLevel: string | null }

/** The readings that hold of one measure on one piece, or on the whole batch. Lock the batch first. */
export async function readingsAtPlace(tx: Tx, bakeryId: string, trialId: string, { batchId, measureId, piece, factorLevel }: Place) {
  const ofMeasure = await tx.reading.findMany({
    where: { bakeryId, trialId, batchId, measureId },
    select: { id: true, piece: true, factorLevel: true, repeat: true, value: true, supersedesId: true, receivedAt: true },
  })
  // A correction may have moved a reading to another piece, so the chains are followed before places are looked at.
  return currentReadings(ofMeasure)
    .filter((reading) => reading.piece === piece && reading.factorLevel === factorLevel)
    .sort((a, b) => a.repeat - b.repeat)
}

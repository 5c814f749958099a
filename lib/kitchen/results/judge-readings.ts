import 'server-only'
import type { Db, Tx } from '../../db/client'
import { hashOfFacts } from '../heavy/hash-of-facts'
import { keepLast } from '../heavy/keep-last'
import { currentReadings } from '../readings/current-readings'
import { gapsOfBatches, readingsToJudge, type BatchGaps } from '../readings/gaps-of-trial'
import type { everyMeasure } from '../readings/measures-to-read'
import { readingsOfTrial } from './readings-of-trial'

export type JudgedReadings = {
  /** What was read of each batch, by its id. */
  figures: ReturnType<typeof readingsOfTrial>
  /** What is missing, unsettled or odd of the measured batches, in their order. */
  gaps: readonly BatchGaps[]
}

type Question = {
  bakeryId: string
  /** Of `sealNow`, read before. */
  seal: string
  trial: { id: string; measure: Parameters<typeof readingsOfTrial>[0]['primary']; piecesPerBatch: number }
  measures: Awaited<ReturnType<typeof everyMeasure>>
  /** The measured ones, in order. */
  measured: readonly { id: string; code: string; piecesMade: number | null }[]
  /** Of `countToSettle`. */
  toSettle: ReadonlyMap<string, number>
}

/** The readings of so many trials are kept as judged, those that were looked at last. */
const kept = keepLast<JudgedReadings>(100)

/**
 * What the readings of a trial come to, read and judged once for the same seal, measures and batches. A reading is
 * never changed or taken out, so what is kept for a seal is never older than the seal.
 */
export function judgeReadings(
  from: Db | Tx,
  { bakeryId, seal, trial, measures, measured, toSettle }: Question,
): Promise<JudgedReadings> {
  const rests = [
    bakeryId,
    seal,
    trial.id,
    trial.measure.id,
    trial.measure.level,
    trial.piecesPerBatch,
    measures,
    measured.map(({ id, code, piecesMade }) => [id, code, piecesMade]),
    [...toSettle].sort(),
  ]
  return kept(hashOfFacts(rests), async () => {
    const readings = currentReadings(await readingsToJudge(from, bakeryId, { trialId: trial.id }))
    return {
      figures: readingsOfTrial({ readings, measures, primary: trial.measure }),
      gaps: gapsOfBatches({
        trial: { measureId: trial.measure.id, piecesPerBatch: trial.piecesPerBatch },
        measures: measures.filter(({ endedAt }) => endedAt === null),
        batches: measured,
        readings,
        toSettle,
      }),
    }
  })
}

/** One hash over all readings that a trial has at this moment, corrected ones with their corrections. */
export async function sealNow(from: Db | Tx, bakeryId: string, trialId: string): Promise<string> {
  const [row] = await from.$queryRaw<{ seal: string }[]>`
    SELECT encode(sha256(convert_to(coalesce(string_agg(id::text || ' ' || content_hash, E'\\n' ORDER BY id), ''), 'UTF8')), 'hex') AS seal
    FROM reading WHERE bakery_id = ${bakeryId}::uuid AND trial_id = ${trialId}::uuid`
  return row?.seal ?? ''
}

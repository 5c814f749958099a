import 'server-only'
import type { Tx } from '../../db/client'
import type { PlausibleRange } from './plausible-range'
import { readingColumns } from './reading-columns'

type By = { bakeryId: string; personId: string }
type Entered = { id: string; repeat: number; value: string; unit: string }
type Place = { batchId: string; measureId: string; piece: number | null; factorLevel: string | null }
type Reading = {
  trialId: string
  place: Place
  /** In the measure's base unit. */
  value: number
  /** That it was judged by. */
  range: PlausibleRange
  takenAt: Date
  receivedAt: Date
  contentHash: string
  /** The reading that was wrong, and why. */
  supersedes?: { id: string; reason: string }
}

/** Writes a reading's row. A step shared by logging one and putting one in the place of a wrong one. */
export function keepReading(tx: Tx, by: By, entered: Entered, reading: Reading) {
  return tx.reading.create({ data: rowOf(by, entered, reading), select: readingColumns })
}

/** Writes the rows of many readings in one statement: with a thousand parameters or more the client takes seconds for it. */
export async function keepReadings(tx: Tx, by: By, readings: readonly { entered: Entered; reading: Reading }[]): Promise<void> {
  const rows = JSON.stringify(readings.map(({ entered, reading }) => rowOf(by, entered, reading)))
  await tx.$executeRaw`
    INSERT INTO reading (bakery_id, id, trial_id, batch_id, measure_id, piece, factor_level, repeat, value, value_entered, unit_entered,
      person_id, taken_at, received_at, supersedes_id, reason, content_hash, plausible_least, plausible_most)
    SELECT "bakeryId", "id", "trialId", "batchId", "measureId", "piece", "factorLevel", "repeat", "value", "valueEntered", "unitEntered",
      "personId", "takenAt", "receivedAt", "supersedesId", "reason", "contentHash", "plausibleLeast", "plausibleMost"
    FROM jsonb_to_recordset(${rows}::jsonb) AS kept ("bakeryId" uuid, "id" uuid, "trialId" uuid, "batchId" uuid, "measureId" uuid,
      "piece" integer, "factorLevel" text, "repeat" integer, "value" double precision, "valueEntered" text, "unitEntered" text,
      "personId" uuid, "takenAt" timestamptz, "receivedAt" timestamptz, "supersedesId" uuid, "reason" text, "contentHash" text,
      "plausibleLeast" double precision, "plausibleMost" double precision)`
}

function rowOf(by: By, entered: Entered, { trialId, place, value, range, takenAt, receivedAt, contentHash, supersedes }: Reading) {
  return {
    bakeryId: by.bakeryId,
    id: entered.id,
    trialId,
    ...place,
    repeat: entered.repeat,
    value,
    valueEntered: entered.value,
    unitEntered: entered.unit,
    personId: by.personId,
    takenAt,
    receivedAt,
    supersedesId: supersedes?.id ?? null,
    reason: supersedes?.reason ?? null,
    contentHash,
    plausibleLeast: range.least,
    plausibleMost: range.most,
  }
}

import 'server-only'
import type { Tx } from '../../db/client'

/** A reading as it stands in the book. */
export type ReadingRow = {
  bakeryId: string
  id: string
  trialId: string
  batchId: string
  measureId: string
  piece: number | null
  factorLevel: string | null
  repeat: number
  /** In the measure's base unit. */
  value: number
  valueEntered: string
  unitEntered: string
  personId: string
  takenAt: Date
  receivedAt: Date
  /** The reading that was wrong, and why. */
  supersedesId: string | null
  reason: string | null
  contentHash: string
  /** The range that it was judged by. */
  plausibleLeast: number
  plausibleMost: number
}

/**
 * Writes readings, however they came, in one statement: with a thousand parameters or more the client takes seconds for
 * it. Their places go with them, in the database.
 */
export async function keepReadings(tx: Tx, readings: readonly ReadingRow[]): Promise<void> {
  await tx.$executeRaw`
    INSERT INTO reading (bakery_id, id, trial_id, batch_id, measure_id, piece, factor_level, repeat, value, value_entered, unit_entered,
      person_id, taken_at, received_at, supersedes_id, reason, content_hash, plausible_least, plausible_most)
    SELECT "bakeryId", "id", "trialId", "batchId", "measureId", "piece", "factorLevel", "repeat", "value", "valueEntered", "unitEntered",
      "personId", "takenAt", "receivedAt", "supersedesId", "reason", "contentHash", "plausibleLeast", "plausibleMost"
    FROM jsonb_to_recordset(${JSON.stringify(readings)}::jsonb) AS kept ("bakeryId" uuid, "id" uuid, "trialId" uuid, "batchId" uuid, "measureId" uuid,
      "piece" integer, "factorLevel" text, "repeat" integer, "value" double precision, "valueEntered" text, "unitEntered" text,
      "personId" uuid, "takenAt" timestamptz, "receivedAt" timestamptz, "supersedesId" uuid, "reason" text, "contentHash" text,
      "plausibleLeast" double precision, "plausibleMost" double precision)`
}

import 'server-only'
import type { Tx } from '../../db/client'
import type { AsideWhy } from '../../db/generated/enums'

/** An entry that somebody has to settle, whole. */
export type AsideRow = {
  bakeryId: string
  entryId: string
  hash: string
  kind: string
  /** Its canonical text. */
  text: string
  why: AsideWhy
  trialId: string
  batchId: string
  sentById: string
  receivedAt: Date
}

/** Keeps entries aside, in one statement. One that is aside already, by a hair, stays as it is. */
export async function keepAside(tx: Tx, rows: readonly AsideRow[]): Promise<void> {
  if (rows.length === 0) return
  await tx.$executeRaw`
    INSERT INTO entry_to_settle (bakery_id, entry_id, hash, kind, text, why, trial_id, batch_id, sent_by_id, received_at)
    SELECT "bakeryId", "entryId", "hash", "kind", "text", "why", "trialId", "batchId", "sentById", "receivedAt"
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS kept ("bakeryId" uuid, "entryId" uuid, "hash" text, "kind" text, "text" text,
      "why" aside_why, "trialId" uuid, "batchId" uuid, "sentById" uuid, "receivedAt" timestamptz)
    ON CONFLICT (bakery_id, entry_id, hash) DO NOTHING`
}

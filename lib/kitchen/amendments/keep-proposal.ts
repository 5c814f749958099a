import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Tx } from '../../db/client'
import { textOfAmendment, type AmendmentContent } from '../../documents/amendment/text-of-amendment'

/** Writes a proposed amendment. @returns its id and hash, for the record */
export async function keepProposal(
  tx: Tx,
  q: {
    bakeryId: string
    trialId: string
    closing: string
    change: AmendmentContent['change']
    reason: string | null
    by: { id: string; name: string }
    at: Date
    entry: { id: string; hash: string } | null
  },
): Promise<{ amendment: string; hash: string }> {
  const { bakeryId, trialId, closing, change, reason, by, at, entry } = q
  const id = uuid()
  const { text, hash } = textOfAmendment({
    bakery: bakeryId,
    trial: trialId,
    id,
    closing,
    change,
    reason,
    by,
    at: at.toISOString(),
    entry,
  })
  await tx.amendment.create({
    data: {
      bakeryId,
      id,
      trialId,
      batchId: change.dough.id,
      text,
      hash,
      entryId: entry?.id ?? null,
      entryHash: entry?.hash ?? null,
      proposedById: by.id,
      at,
    },
  })
  return { amendment: id, hash }
}

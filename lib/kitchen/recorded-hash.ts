import 'server-only'
import type { Db, Tx } from '../db/client'
import { notedBy, notedHash, type NotedKind } from './noted-hash'

/**
 * The hash of a text that was frozen, as the record noted it at that moment; null where the record does not say. A text
 * and its own hash can be changed together, the record's entry only with all that follow it.
 * @param targetId what the entry is about: the decision, the trial
 */
export async function recordedHash(
  from: Db | Tx,
  bakeryId: string,
  targetId: string,
  kind: NotedKind,
): Promise<string | null> {
  const entry = await from.auditEntry.findFirst({
    where: { bakeryId, targetId, action: { in: [...notedBy[kind]] } },
    orderBy: { number: 'asc' },
    select: { entryText: true, hash: true },
  })
  return entry && notedHash(entry.entryText, entry.hash, kind)
}

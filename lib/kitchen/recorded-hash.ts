import 'server-only'
import { z } from 'zod'
import type { Db, Tx } from '../db/client'
import { readAuditEntry } from '../documents/audit-entry/read-audit-entry'
import { hashOfText } from '../documents/hash-of-text'

/** By whose entry in the record each kind of frozen text was kept, and under which name its hash stands there. */
const noted = {
  evidence: ['decisions.draft-change', 'decisions.keep-formula'],
  closing: ['results.close-trial'],
} as const

/**
 * The hash of a text that was frozen, as the record noted it at that moment; null where the record does not say. A text
 * and its own hash can be changed together, the record's entry only with all that follow it.
 * @param targetId what the entry is about: the decision, the trial
 */
export async function recordedHash(
  from: Db | Tx,
  bakeryId: string,
  targetId: string,
  kind: keyof typeof noted,
): Promise<string | null> {
  const entry = await from.auditEntry.findFirst({
    where: { bakeryId, targetId, action: { in: [...noted[kind]] } },
    orderBy: { number: 'asc' },
    select: { entryText: true, hash: true },
  })
  if (!entry || hashOfText(entry.entryText) !== entry.hash) return null
  const read = readAuditEntry(entry.entryText)
  if (read.outcome !== 'read') return null
  return z.looseObject({ [kind]: z.string() }).safeParse(read.entry.after).data?.[kind] ?? null
}

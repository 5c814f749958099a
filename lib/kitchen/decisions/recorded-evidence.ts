import 'server-only'
import { z } from 'zod'
import type { Db } from '../../db/client'
import { readAuditEntry } from '../../documents/audit-entry/read-audit-entry'
import { hashOfText } from '../../documents/hash-of-text'

const actions = ['decisions.draft-change', 'decisions.keep-formula']
const noted = z.looseObject({ evidence: z.string() })

/**
 * The hash of the evidence that was frozen with a decision, as the record noted it at that moment; null where the record
 * does not say. Evidence and its own hash can be changed together, the record's entry only with all that follow it.
 */
export async function recordedEvidence(db: Db, bakeryId: string, decisionId: string): Promise<string | null> {
  const entry = await db.auditEntry.findFirst({
    where: { bakeryId, targetId: decisionId, action: { in: actions } },
    orderBy: { number: 'asc' },
    select: { entryText: true, hash: true },
  })
  if (!entry || hashOfText(entry.entryText) !== entry.hash) return null
  const read = readAuditEntry(entry.entryText)
  return read.outcome === 'read' ? (noted.safeParse(read.entry.after).data?.evidence ?? null) : null
}

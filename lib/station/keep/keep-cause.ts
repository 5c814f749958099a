import { keepEntry, type KeptBy } from './keep-entry'
import type { Kept } from './tablet'

/** Under what a half-typed cause is kept: nobody finds another's, and keeps it as their own. */
export function causeDraft(personId: string, batchId: string): string {
  return `${personId} cause ${batchId}`
}

/**
 * Keeps on the tablet what happened to a dough, as the book will hold it: without the blanks at its ends and in one form of
 * Unicode, or its hash would be another.
 * @throws where the tablet cannot keep it
 */
export async function keepCause(q: { of: Kept['wrong']; what: string; by: KeptBy }): Promise<void> {
  const { of, what, by } = q
  await keepEntry({
    kind: 'cause',
    content: { batchId: of.batchId, what: what.trim().normalize('NFC') },
    shown: { code: of.code },
    by,
    draft: causeDraft(by.personId, of.batchId),
    isTaken: () => false,
  })
}

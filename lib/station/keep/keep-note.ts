import { keepEntry, type KeptBy } from './keep-entry'
import type { Kept } from './tablet'

/** Under what a half-typed note is kept: nobody finds another's, and keeps it as their own. */
export function noteDraft(personId: string, batchId: string | null): string {
  return `${personId} note ${batchId ?? 'shift'}`
}

/**
 * Keeps a note on the tablet, as the book will hold it: without the blanks at its ends and in one form of Unicode, or its
 * hash would be another.
 * @throws where the tablet cannot keep it
 */
export async function keepNote(q: { of: Kept['noting']; text: string; forNext: boolean; by: KeptBy }): Promise<void> {
  const { of, text, forNext, by } = q
  await keepEntry({
    kind: 'note',
    content: { batchId: of.batchId, text: text.trim().normalize('NFC'), forNext },
    shown: { code: of.code },
    by,
    draft: noteDraft(by.personId, of.batchId),
    isTaken: () => false,
  })
}

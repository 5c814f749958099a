import { textOfNote } from '../../documents/note/text-of-note.input'
import type { NoteEntry } from './log-note.input'

/** What a note's hash is of: everything that was entered but its id. */
export function noteContentText({ batchId, forNext, takenAt, text, trialId }: NoteEntry): string {
  return textOfNote({ batch: batchId ?? null, forNext, takenAt, text, trial: trialId ?? null })
}

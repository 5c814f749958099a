import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { judgeNote } from './judge-note'
import { keepNoteInput } from './log-note.input'
import { loadNoteFacts } from './note-facts'

/** Keeps a note from the desk, of a dough or of the shift. Refuses: not-found. */
export const keepNote = command({
  name: 'notes.keep-note',
  input: keepNoteInput,
  right: 'log-reading',
  async run({ tx, actor, now, input }) {
    const entry = { ...input, id: uuid(), takenAt: now.toISOString() }
    const verdict = judgeNote(entry, await loadNoteFacts(tx, actor.bakeryId, [entry]), { actor, now })
    if (verdict.outcome !== 'ready') throw new Error('an id that was made just now was there already')
    await tx.note.create({ data: verdict.row })
    return {
      value: { noteId: verdict.row.id },
      audit: { target: verdict.row.batchId ?? verdict.row.id, after: verdict.note },
    }
  },
})

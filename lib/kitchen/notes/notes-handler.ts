import 'server-only'
import { z } from 'zod'
import { entryHandler } from '../intake/entry-handler'
import { judgeNote } from './judge-note'
import { logNoteInput, type NoteEntry } from './log-note.input'
import { noteContentText } from './note-content.input'
import { loadNoteFacts, type NoteFacts, type NoteRow } from './note-facts'

/** Notes, from outside. None is ever kept aside: nobody else can have been faster. */
export const notesHandler = entryHandler<NoteEntry, NoteFacts, NoteRow>({
  kinds: { note: { input: logNoteInput, right: 'log-reading', answer: z.strictObject({}) } },
  textOf: noteContentText,
  load: loadNoteFacts,
  judge(entry, facts, by) {
    const verdict = judgeNote(entry, facts, by)
    if (verdict.outcome === 'again') return { outcome: 'again', about: {} }
    return { outcome: 'ready', row: verdict.row, at: null, about: {}, note: verdict.note }
  },
  note(facts, { id, contentHash }) {
    facts.hashes.set(id, contentHash)
  },
  noteAside() {
    throw new Error('no note is kept aside')
  },
  async keep(tx, rows) {
    await tx.note.createMany({ data: [...rows] })
  },
  held: (from, bakeryId, ids) =>
    from.note.findMany({ where: { bakeryId, id: { in: ids } }, select: { id: true, contentHash: true } }),
  whyAside: {},
})

import 'server-only'
import { z } from 'zod'
import { command } from '../command'
import { Refusal } from '../refusal'

/**
 * Notes that somebody has read a note, once: what was left for the next shift is then no longer at the top of it. Nobody
 * reads their own for the next shift. Refuses: not-found, own-note.
 */
export const noteRead = command({
  name: 'notes.note-read',
  input: z.strictObject({ noteId: z.uuid() }),
  right: 'log-reading',
  async run({ tx, actor, now, input: { noteId } }) {
    const { bakeryId, personId } = actor
    const note = await tx.note.findUnique({
      where: { bakeryId_id: { bakeryId, id: noteId } },
      select: { personId: true },
    })
    if (!note) throw new Refusal('not-found')
    if (note.personId === personId) throw new Refusal('own-note')
    const { count } = await tx.noteReader.createMany({
      data: [{ bakeryId, noteId, personId, at: now }],
      skipDuplicates: true,
    })
    return { value: null, audit: count === 1 ? { target: noteId } : null }
  },
})
